#include "core/services/round_start.h"

#include "core/support/text.h"

#include <algorithm>

namespace coilbook {

namespace {

Sitting makeSitting(const InspectionId& inspection, const RoundFacts& facts) {
    return {SittingId::make(), inspection, facts.tester, normalised(facts.inspector),
            facts.engineTemperature};
}

/// Three decimals of a degree, as an integer; the text must be plain digits with at most one mark.
std::optional<std::int32_t> thousandths(QStringView text) {
    std::int32_t value = 0;
    int digits = 0;
    int decimals = -1; // -1: before the mark
    for (const QChar c : text) {
        if ((c == QLatin1Char('.') || c == QLatin1Char(',')) && decimals < 0 && digits > 0) {
            decimals = 0;
        } else if (c >= QLatin1Char('0') && c <= QLatin1Char('9') && digits < 6 && decimals < 3) {
            value = value * 10 + (c.unicode() - u'0');
            ++digits;
            decimals += decimals >= 0 ? 1 : 0;
        } else {
            return std::nullopt;
        }
    }
    if (digits == 0 || decimals == 0) {
        return std::nullopt;
    }
    for (int place = std::max(decimals, 0); place < 3; ++place) {
        value *= 10;
    }
    return value;
}

} // namespace

RoundPrefill roundPrefill(const EngineLog& log) {
    RoundPrefill prefill;
    for (const Race& race : log.races) {
        prefill.races = std::max(prefill.races, race.number);
    }
    for (const Inspection& inspection : log.inspections) {
        prefill.races = std::max(prefill.races, inspection.engineRaces);
    }
    for (auto at = log.inspections.rbegin(); at != log.inspections.rend(); ++at) {
        if (const Sitting* sitting = newestSitting(log, at->id); sitting && sitting->tester) {
            prefill.tester = sitting->tester;
            break;
        }
    }
    return prefill;
}

StartInspection startOf(const EngineId& engine, const RoundFacts& facts, bool open) {
    const Inspection inspection{InspectionId::make(), engine, facts.on, facts.races, !open};
    return {inspection, makeSitting(inspection.id, facts)};
}

StartSitting sittingOf(const InspectionId& inspection, const RoundFacts& facts) {
    return {makeSitting(inspection, facts)};
}

const Inspection* inspectionOn(const EngineLog& log, const QDate& on, int races) {
    const auto found = std::find_if(
        log.inspections.begin(), log.inspections.end(), [&](const Inspection& inspection) {
            return inspection.inspectedOn == on && inspection.engineRaces == races;
        });
    return found == log.inspections.end() ? nullptr : &*found;
}

const Inspection* openInspection(const EngineLog& log) {
    const auto found =
        std::find_if(log.inspections.rbegin(), log.inspections.rend(),
                     [](const Inspection& inspection) { return !inspection.closed; });
    return found == log.inspections.rend() ? nullptr : &*found;
}

const Inspection* inspectionWith(const EngineLog& log, const InspectionId& id) {
    const auto found = std::find_if(log.inspections.begin(), log.inspections.end(),
                                    [&](const Inspection& each) { return each.id == id; });
    return found == log.inspections.end() ? nullptr : &*found;
}

const Sitting* newestSitting(const EngineLog& log, const InspectionId& inspection) {
    const auto found =
        std::find_if(log.sittings.rbegin(), log.sittings.rend(),
                     [&](const Sitting& sitting) { return sitting.inspection == inspection; });
    return found == log.sittings.rend() ? nullptr : &*found;
}

const Tester* testerWith(const EngineLog& log, const TesterId& id) {
    const auto found = std::find_if(log.testers.begin(), log.testers.end(),
                                    [&](const Tester& each) { return each.id == id; });
    return found == log.testers.end() ? nullptr : &*found;
}

std::optional<Temperature> temperatureFromText(QStringView text) {
    text = text.trimmed();
    const bool below = text.startsWith(QLatin1Char('-')) || text.startsWith(QChar(0x2212));
    const std::optional<std::int32_t> size = thousandths(below ? text.mid(1) : text);
    if (!size) {
        return std::nullopt;
    }
    const std::int32_t value = below ? -*size : *size;
    if (value < -40'000 || value > 250'000) {
        return std::nullopt;
    }
    return Temperature::milliCelsius(value);
}

} // namespace coilbook
