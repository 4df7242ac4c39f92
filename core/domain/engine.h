#pragma once

#include "core/domain/engine_layout.h"
#include "core/domain/ids.h"
#include "core/units/force.h"

#include <QString>

#include <optional>

namespace coilbook {

/// How sure the estimate must be before it calls a spring past the limit.
enum class Caution { Cautious, Even, Thrifty }; ///< 0.3, 0.5 (default), 0.7

[[nodiscard]] constexpr double probabilityOf(Caution caution) {
    switch (caution) {
    case Caution::Cautious:
        return 0.3;
    case Caution::Even:
        return 0.5;
    case Caution::Thrifty:
        return 0.7;
    }
    return 0.5;
}

/// What the wear of an engine goes by.
enum class ExposureUnit {
    Races,
    Laps, ///< in mean races of the engine, where every race has its laps
};

/// What the owner of an engine has decided about judging its springs.
struct JudgingRules {
    /// Loss of seat pressure at which a spring is swapped (5 lbf: common practice, no source).
    Force limit = Force::poundsForce(5.0);
    int racesAhead = 3; ///< 0 to 60
    Caution caution = Caution::Even;

    bool operator==(const JudgingRules&) const = default;
};

/// One engine of the shop. Its facts may be amended; every old value is kept as an Amendment.
struct Engine {
    EngineId id;
    QString name;   ///< unique in the logbook, also but for case
    QString serial; ///< seal or serial number; may be empty
    EngineLayout layout = defaultLayout();
    JudgingRules rules;
    std::optional<int> rpmCeiling; ///< rpm above which a race counts as over-revved
    bool retired = false;          ///< kept and readable, out of the daily list
    bool springsRunIn = false;     ///< its springs were broken in before their baseline
    ExposureUnit exposureUnit = ExposureUnit::Races;
    bool correctsTemperature = false; ///< the assessment uses forces at 20 °C

    bool operator==(const Engine&) const = default;
};

} // namespace coilbook
