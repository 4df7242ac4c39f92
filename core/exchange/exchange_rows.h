#pragma once

#include "core/domain/place.h"
#include "core/exchange/exchange_header.h"
#include "core/exchange/text_pool.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <cstdint>
#include <vector>

namespace coilbook {

/// One file of an import, so that a row can say where it stands.
struct ExchangeFile {
    QString path;
    ExchangeHeader header;
};

/// A row of readings.csv, small enough for millions of them in memory.
struct ReadingRow {
    static constexpr std::int32_t kNoTemperature = INT32_MIN;

    std::int64_t digits = 0;
    TextId engine = kNoText;
    TextId spring = kNoText;
    TextId tester = kNoText;
    TextId inspector = kNoText;
    TextId note = kNoText;
    std::int32_t day = 0; ///< Julian day of inspected_on
    std::int32_t engineRaces = 0;
    std::int32_t hit = 0; ///< 0: not numbered
    std::int32_t milliCelsius = kNoTemperature;
    std::uint32_t line = 0;
    std::uint16_t file = 0;
    std::uint8_t cylinder = 1;
    std::uint8_t decimals = 0;
    ForceUnit unit = ForceUnit::PoundForce;
    Valve valve = Valve::Intake;
    bool retest = false;

    [[nodiscard]] Place place() const { return {Cylinder(cylinder), valve}; }

    [[nodiscard]] QDate inspectedOn() const { return QDate::fromJulianDay(day); }

    [[nodiscard]] TypedForce value() const { return {digits, decimals, unit}; }
};

/// A row of races.csv.
struct RaceRow {
    static constexpr std::int32_t kNotGiven = -1;

    TextId engine = kNoText;
    TextId venue = kNoText;
    TextId note = kNoText;
    std::int32_t number = 1;
    std::int32_t day = 0; ///< Julian day of raced_on
    std::int32_t laps = kNotGiven;
    std::int32_t peakRpm = kNotGiven;
    std::int32_t overRev = kNotGiven; ///< 0, 1
    std::uint32_t line = 0;
    std::uint16_t file = 0;

    [[nodiscard]] QDate racedOn() const { return QDate::fromJulianDay(day); }
};

/// All that was read from the files of one import, in their order.
struct ExchangeInput {
    TextPool texts;
    std::vector<ExchangeFile> files;
    std::vector<ReadingRow> readings;
    std::vector<RaceRow> races;
};

} // namespace coilbook
