#include "core/exchange/exchange_columns.h"

#include <algorithm>
#include <array>

namespace coilbook {

namespace {

constexpr std::array kReadingColumns{
    ColumnRule{Column::Engine, "engine", Needed::Yes},
    ColumnRule{Column::InspectedOn, "inspected_on", Needed::Yes},
    ColumnRule{Column::EngineRaces, "engine_races", Needed::Yes},
    ColumnRule{Column::Cylinder, "cylinder", Needed::Yes},
    ColumnRule{Column::Valve, "valve", Needed::Yes},
    ColumnRule{Column::Spring, "spring", Needed::Yes},
    ColumnRule{Column::ReadingLbf, "reading_lbf", Needed::OneOfTheReadings},
    ColumnRule{Column::ReadingN, "reading_n", Needed::OneOfTheReadings},
    ColumnRule{Column::Hit, "hit", Needed::No},
    ColumnRule{Column::Retest, "retest", Needed::No},
    ColumnRule{Column::Tester, "tester", Needed::No},
    ColumnRule{Column::Inspector, "inspector", Needed::No},
    ColumnRule{Column::Note, "note", Needed::No},
    ColumnRule{Column::EngineTempC, "engine_temp_c", Needed::No},
};

constexpr std::array kRaceColumns{
    ColumnRule{Column::Engine, "engine", Needed::Yes},
    ColumnRule{Column::Race, "race", Needed::Yes},
    ColumnRule{Column::RacedOn, "raced_on", Needed::Yes},
    ColumnRule{Column::Venue, "venue", Needed::No},
    ColumnRule{Column::Laps, "laps", Needed::No},
    ColumnRule{Column::PeakRpm, "peak_rpm", Needed::No},
    ColumnRule{Column::OverRev, "over_rev", Needed::No},
    ColumnRule{Column::Note, "note", Needed::No},
};

} // namespace

std::span<const ColumnRule> columnsOf(ExchangeKind kind) {
    return kind == ExchangeKind::Readings ? std::span<const ColumnRule>(kReadingColumns)
                                          : std::span<const ColumnRule>(kRaceColumns);
}

QString columnName(Column column) {
    for (const ExchangeKind kind : {ExchangeKind::Readings, ExchangeKind::Races}) {
        const auto rules = columnsOf(kind);
        const auto rule = std::find_if(rules.begin(), rules.end(), [column](const ColumnRule& r) {
            return r.column == column;
        });
        if (rule != rules.end()) {
            return QString::fromLatin1(rule->name);
        }
    }
    return {};
}

} // namespace coilbook
