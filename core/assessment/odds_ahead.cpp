#include "core/assessment/odds_ahead.h"

#include <algorithm>

namespace coilbook {

OddsAhead runningMaximum(OddsAhead odds) {
    for (std::size_t h = 1; h < odds.size(); ++h) {
        odds[h] = std::max(odds[h], odds[h - 1]);
    }
    return odds;
}

double oddsDueWithin(const OddsAhead& odds, int racesAhead) {
    const auto last = std::clamp(racesAhead, 0, kMostRacesAhead);
    return *std::max_element(odds.begin(), odds.begin() + last + 1);
}

RacesLeft racesLeftBy(const OddsAhead& odds) {
    const OddsAhead reached = runningMaximum(odds);
    const auto firstAt = [&](double probability) -> std::optional<int> {
        const auto found = std::lower_bound(reached.begin(), reached.end(), probability);
        return found == reached.end() ? std::nullopt
                                      : std::optional(static_cast<int>(found - reached.begin()));
    };
    return {firstAt(0.1), firstAt(0.5), firstAt(0.9)};
}

} // namespace coilbook
