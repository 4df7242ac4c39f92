#include "core/domain/planned_race.h"

#include "core/domain/engine_log.h"

#include <algorithm>
#include <tuple>

namespace coilbook {

std::vector<PlannedRace> comingRaces(const EngineLog& log, const QDate& asOf) {
    const bool racedThatDay = std::any_of(log.races.begin(), log.races.end(),
                                          [&](const Race& race) { return race.racedOn == asOf; });
    std::vector<PlannedRace> coming;
    for (const PlannedRace& race : log.plannedRaces) {
        const bool isOver =
            !asOf.isNull() && (race.plannedOn < asOf || (race.plannedOn == asOf && racedThatDay));
        if (!race.withdrawn && !isOver) {
            coming.push_back(race);
        }
    }
    std::sort(coming.begin(), coming.end(), [](const PlannedRace& a, const PlannedRace& b) {
        return std::tuple(a.plannedOn.toJulianDay(), a.id) <
               std::tuple(b.plannedOn.toJulianDay(), b.id);
    });
    return coming;
}

} // namespace coilbook
