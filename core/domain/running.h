#pragma once

#include "core/domain/ids.h"

#include <QDate>
#include <QString>

#include <optional>

namespace coilbook {

/// Running that is no race and wears the springs all the same: a test day, dyno pulls. How much it
/// was is said in laps or as a part of a race, exactly one of the two.
struct Running {
    RunningId id;
    EngineId engine;
    QDate ranOn;
    int engineRaces = 0; ///< races that the engine had run by then
    std::optional<int> laps;
    std::optional<int> raceThousandths; ///< 1 to 10000; 1000 is worth one race
    QString note;
    bool withdrawn = false; ///< kept and counts no longer (undone)

    bool operator==(const Running&) const = default;
};

} // namespace coilbook
