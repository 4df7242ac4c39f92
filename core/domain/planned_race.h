#pragma once

#include "core/domain/ids.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// A race to come, as the calendar of the team has it. Once it is run it is logged as a Race; this
/// stays as it was planned.
struct PlannedRace {
    PlannedRaceId id;
    EngineId engine;
    QDate plannedOn;
    QString venue;
    std::optional<int> laps; ///< 1 to 1000000; counts where the engine's wear goes by laps
    QString note;
    bool withdrawn = false; ///< struck from the calendar, and kept

    bool operator==(const PlannedRace&) const = default;
};

struct EngineLog;

/// Those that are still to be run after `asOf`, by day: none that is struck, none of an earlier
/// day, and of the day itself none for which a race of that day is logged.
[[nodiscard]] std::vector<PlannedRace> comingRaces(const EngineLog& log, const QDate& asOf);

} // namespace coilbook
