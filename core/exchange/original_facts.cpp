#include "core/exchange/original_facts.h"

namespace coilbook {

namespace {

std::optional<int> numberOf(const QString& text) {
    return text.isEmpty() ? std::nullopt : std::optional(text.toInt());
}

} // namespace

OriginalFacts::OriginalFacts(const EngineLog& log)
    : m_amendments(log.amendments) {}

std::optional<QString> OriginalFacts::value(Subject subject, const QUuid& record,
                                            const char* fact) const {
    const Amendment* first = nullptr;
    for (const Amendment& amendment : m_amendments) {
        if (amendment.subject == subject && amendment.record == record &&
            amendment.fact == QLatin1String(fact) &&
            (first == nullptr || amendment.id < first->id)) {
            first = &amendment;
        }
    }
    return first != nullptr ? std::optional(first->oldValue) : std::nullopt;
}

Race OriginalFacts::of(const Race& race) const {
    Race original = race;
    const auto fact = [&](const char* name) {
        return value(Subject::Race, race.id.uuid(), name);
    };
    if (const auto number = fact("number")) {
        original.number = number->toInt();
    }
    if (const auto day = fact("raced_on")) {
        original.racedOn = QDate::fromString(*day, Qt::ISODate);
    }
    original.venue = fact("venue").value_or(original.venue);
    original.note = fact("note").value_or(original.note);
    if (const auto laps = fact("laps")) {
        original.laps = numberOf(*laps);
    }
    if (const auto rpm = fact("peak_rpm")) {
        original.peakRpm = numberOf(*rpm);
    }
    if (const auto overRev = fact("over_rev")) {
        const std::optional<int> flag = numberOf(*overRev);
        original.overRev = flag ? std::optional(*flag == 1) : std::nullopt;
    }
    return original;
}

Inspection OriginalFacts::of(const Inspection& inspection) const {
    Inspection original = inspection;
    const QUuid& id = inspection.id.uuid();
    if (const auto day = value(Subject::Inspection, id, "inspected_on")) {
        original.inspectedOn = QDate::fromString(*day, Qt::ISODate);
    }
    if (const auto races = value(Subject::Inspection, id, "engine_races")) {
        original.engineRaces = races->toInt();
    }
    return original;
}

Sitting OriginalFacts::of(const Sitting& sitting) const {
    Sitting original = sitting;
    const QUuid& id = sitting.id.uuid();
    if (const auto tester = value(Subject::Sitting, id, "tester_id")) {
        original.tester =
            tester->isEmpty() ? std::nullopt : std::optional(TesterId::fromText(*tester));
    }
    original.inspector = value(Subject::Sitting, id, "inspector").value_or(original.inspector);
    if (const auto temperature = value(Subject::Sitting, id, "engine_temp_mc")) {
        const std::optional<int> milli = numberOf(*temperature);
        original.engineTemperature =
            milli ? std::optional(Temperature::milliCelsius(*milli)) : std::nullopt;
    }
    return original;
}

QString OriginalFacts::labelOf(const Spring& spring) const {
    return value(Subject::Spring, spring.id.uuid(), "label").value_or(spring.label);
}

QString OriginalFacts::nameOf(const Tester& tester) const {
    return value(Subject::Tester, tester.id.uuid(), "name").value_or(tester.name);
}

} // namespace coilbook
