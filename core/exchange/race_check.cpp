#include "core/exchange/race_check.h"

#include "core/domain/log_rules.h"
#include "core/exchange/exchange_cells.h"

#include <algorithm>
#include <map>
#include <set>

namespace coilbook {

namespace {

struct Contradiction {
    Column column;
    QString said;
    QString stored;
};

QString numberText(const std::optional<int>& number) {
    return number ? QString::number(*number) : QString();
}

/// The first column in which a row says something else than a stored race; a cell that was left
/// out says nothing.
std::optional<Contradiction> contradictionTo(const RaceRow& row, const Race& race,
                                             const TextPool& texts) {
    if (row.racedOn() != race.racedOn) {
        return Contradiction{Column::RacedOn, row.racedOn().toString(Qt::ISODate),
                             race.racedOn.toString(Qt::ISODate)};
    }
    if (row.venue != kNoText && texts.text(row.venue) != race.venue) {
        return Contradiction{Column::Venue, texts.text(row.venue), race.venue};
    }
    if (row.laps != RaceRow::kNotGiven && row.laps != race.laps) {
        return Contradiction{Column::Laps, QString::number(row.laps), numberText(race.laps)};
    }
    if (row.peakRpm != RaceRow::kNotGiven && row.peakRpm != race.peakRpm) {
        return Contradiction{Column::PeakRpm, QString::number(row.peakRpm),
                             numberText(race.peakRpm)};
    }
    const std::optional<int> overRev =
        race.overRev ? std::optional(*race.overRev ? 1 : 0) : std::nullopt;
    if (row.overRev != RaceRow::kNotGiven && row.overRev != overRev) {
        return Contradiction{Column::OverRev, QString::number(row.overRev), numberText(overRev)};
    }
    if (row.note != kNoText && texts.text(row.note) != race.note) {
        return Contradiction{Column::Note, texts.text(row.note), race.note};
    }
    return std::nullopt;
}

/// Something dated that counts the engine's races.
struct CountedDay {
    std::int32_t day;
    std::int32_t races;
    std::uint32_t inspection;

    auto operator<=>(const CountedDay&) const = default;
};

std::vector<CountedDay> momentsOf(const ImportPlan& plan) {
    std::vector<CountedDay> moments;
    moments.reserve(plan.inspections.size());
    for (std::uint32_t i = 0; i < plan.inspections.size(); ++i) {
        moments.push_back({plan.inspections[i].day, plan.inspections[i].engineRaces, i});
    }
    std::sort(moments.begin(), moments.end());
    return moments;
}

QString dayText(std::int32_t day) {
    return QDate::fromJulianDay(day).toString(Qt::ISODate);
}

} // namespace

void checkRaces(const ExchangeInput& input, RowFaults& faults, const EngineRows& rows,
                const EngineLog& stored, ImportPlan& plan) {
    const OriginalFacts originals(stored);
    std::map<int, std::vector<std::pair<Race, bool>>> formsByNumber; // with "is the present form"
    for (const Race& race : stored.races) {
        const Race original = originals.of(race);
        formsByNumber[race.number].emplace_back(race, true);
        if (original != race) {
            formsByNumber[original.number].emplace_back(original, false);
        }
    }
    std::map<int, std::uint32_t> firstRows;
    for (const std::uint32_t index : rows.races) {
        const RaceRow& row = input.races[index];
        const auto [first, isFirst] = firstRows.emplace(row.number, index);
        if (!isFirst) {
            faults.add(row, Column::Race, InputFault::RaceTwice,
                       QStringList(QString::number(row.number)) +
                           faults.whereIs(input.races[first->second], row));
            continue;
        }
        const auto forms = formsByNumber.find(row.number);
        if (forms == formsByNumber.end()) {
            plan.races.push_back(index);
            continue;
        }
        const auto known =
            std::find_if(forms->second.begin(), forms->second.end(), [&](const auto& form) {
                return !contradictionTo(row, form.first, input.texts);
            });
        if (known == forms->second.end()) {
            const auto contradiction =
                contradictionTo(row, forms->second.front().first, input.texts);
            faults.add(row, contradiction->column, InputFault::ContradictsStored,
                       {contradiction->said, contradiction->stored});
            continue;
        }
        ++plan.report.racesKnown;
        plan.report.amendedOriginals += known->second ? 0 : 1;
    }
}

void checkCourse(const ExchangeInput& input, RowFaults& faults, const EngineLog& stored,
                 const std::vector<std::uint32_t>& firstRows, const ImportPlan& plan) {
    const std::vector<CountedDay> moments = momentsOf(plan);
    // The inspection with the highest count up to each moment.
    std::vector<CountedDay> highest;
    highest.reserve(moments.size());
    std::set<std::uint32_t> reported; // one wrong count may cross many that are right
    for (const CountedDay& moment : moments) {
        if (highest.empty() || highest.back().races <= moment.races) {
            highest.push_back(moment);
            continue;
        }
        const CountedDay top = highest.back();
        highest.push_back(top);
        // What is stored already is in order, so at least one of the two comes from a row.
        const bool isNew = firstRows[moment.inspection] != kNoRow;
        const CountedDay& added = isNew ? moment : top;
        const CountedDay& other = isNew ? top : moment;
        if (firstRows[added.inspection] != kNoRow && reported.insert(added.inspection).second) {
            faults.add(
                input.readings[firstRows[added.inspection]], Column::EngineRaces,
                LogbookFault::RacesGoBack,
                {QString::number(added.races), dayText(other.day), QString::number(other.races)});
        }
    }
    const auto crossing = [&](std::int32_t number, std::int32_t day) {
        const auto counts =
            std::lower_bound(highest.begin(), highest.end(), number,
                             [](const CountedDay& m, std::int32_t n) { return m.races < n; });
        return counts != highest.end() && counts->day < day ? std::optional(*counts) : std::nullopt;
    };
    for (const std::uint32_t index : plan.races) {
        const RaceRow& row = input.races[index];
        if (const std::optional<CountedDay> inspection = crossing(row.number, row.day)) {
            faults.add(row, Column::RacedOn, LogbookFault::RaceAfterInspection,
                       {QString::number(row.number), dayText(row.day), dayText(inspection->day)});
        }
    }
    for (const Race& race : stored.races) {
        const auto day = static_cast<std::int32_t>(race.racedOn.toJulianDay());
        const std::optional<CountedDay> inspection = crossing(race.number, day);
        if (inspection && firstRows[inspection->inspection] != kNoRow) {
            faults.add(input.readings[firstRows[inspection->inspection]], Column::InspectedOn,
                       LogbookFault::RaceAfterInspection,
                       {QString::number(race.number), dayText(day), dayText(inspection->day)});
        }
    }
    const auto checkAgainst = [&](const QDate& day, int races) {
        for (const CountedDay& moment : moments) {
            const std::uint32_t row = firstRows[moment.inspection];
            if (row != kNoRow &&
                !isInOrder(day, races, QDate::fromJulianDay(moment.day), moment.races)) {
                faults.add(input.readings[row], Column::EngineRaces, LogbookFault::RacesGoBack,
                           {QString::number(moment.races), day.toString(Qt::ISODate),
                            QString::number(races)});
            }
        }
    };
    for (const Running& running : stored.running) {
        if (!running.withdrawn) {
            checkAgainst(running.ranOn, running.engineRaces);
        }
    }
    for (const LevelChange& change : stored.levelChanges) {
        if (!change.withdrawn) {
            checkAgainst(change.changedOn, change.engineRaces);
        }
    }
}

} // namespace coilbook
