#pragma once

#include "core/assessment/assessment.h"

#include <vector>

namespace coilbook {

/// The assessed springs in the order in which somebody should look at them (indices into
/// `assessment.springs`): past the limit, due, sound, no trend yet; within one standing those off
/// their trend first, then by the odds of being due and by the measured loss, the worst first;
/// otherwise by place.
[[nodiscard]] std::vector<std::size_t> byUrgency(const Assessment& assessment);

/// How many springs have each standing.
struct StandingCounts {
    int pastLimit = 0;
    int due = 0;
    int sound = 0;
    int noTrend = 0;

    bool operator==(const StandingCounts&) const = default;
};

[[nodiscard]] StandingCounts standingCounts(const Assessment& assessment);

} // namespace coilbook
