#pragma once

#include <QString>

#include <cstddef>
#include <span>

namespace coilbook {

/// The two kinds of exchange file; the header tells which one a file is.
enum class ExchangeKind { Readings, Races };

/// Every column that exchange files may have.
enum class Column {
    Engine,
    InspectedOn,
    EngineRaces,
    Cylinder,
    Valve,
    Spring,
    ReadingLbf,
    ReadingN,
    Hit,
    Retest,
    Tester,
    Inspector,
    Note,
    EngineTempC,
    Race,
    RacedOn,
    Venue,
    Laps,
    PeakRpm,
    OverRev,
};

constexpr std::size_t kColumnCount = static_cast<std::size_t>(Column::OverRev) + 1;

enum class Needed { Yes, No, OneOfTheReadings };

struct ColumnRule {
    Column column;
    const char* name;
    Needed needed;
};

/// The columns of a kind, in the order in which they are exported.
[[nodiscard]] std::span<const ColumnRule> columnsOf(ExchangeKind kind);

[[nodiscard]] QString columnName(Column column);

} // namespace coilbook
