#pragma once

#include "core/domain/ids.h"

#include <QDate>
#include <QString>

#include <optional>

namespace coilbook {

/// One race that an engine ran. `number` is the engine's count after it: 1, 2, 3 …
struct Race {
    RaceId id;
    EngineId engine;
    int number = 1;
    QDate racedOn;
    QString venue;
    std::optional<int> laps;
    std::optional<int> peakRpm;
    std::optional<bool> overRev; ///< as stated; empty: judged from peakRpm and the engine's ceiling
    QString note;

    bool operator==(const Race&) const = default;
};

/// Whether the engine was over-revved in this race: as stated, else peak rpm above the ceiling if
/// both are known, else no.
[[nodiscard]] inline bool isOverRev(const Race& race, const std::optional<int>& rpmCeiling) {
    if (race.overRev) {
        return *race.overRev;
    }
    return race.peakRpm && rpmCeiling && *race.peakRpm > *rpmCeiling;
}

} // namespace coilbook
