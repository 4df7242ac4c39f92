#include "core/domain/level_change.h"

#include <algorithm>
#include <tuple>

namespace coilbook {

bool isLevelChanged(const std::vector<LevelChange>& changes, const SpringId& spring,
                    const Inspection& earlier, const Inspection& later) {
    const auto momentOf = [](const QDate& day, int races) {
        return std::tuple(day.toJulianDay(), races);
    };
    return std::any_of(changes.begin(), changes.end(), [&](const LevelChange& change) {
        const auto changed = momentOf(change.changedOn, change.engineRaces);
        return !change.withdrawn && change.spring == spring &&
               momentOf(earlier.inspectedOn, earlier.engineRaces) <= changed &&
               changed < momentOf(later.inspectedOn, later.engineRaces);
    });
}

} // namespace coilbook
