#include "core/services/urgency.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace coilbook {

namespace {

int rankOf(Standing standing) {
    switch (standing) {
    case Standing::PastLimit:
        return 0;
    case Standing::Due:
        return 1;
    case Standing::Sound:
        return 2;
    case Standing::NoTrend:
        return 3;
    }
    return 3;
}

auto keyOf(const SpringAssessment& spring) {
    return std::tuple(rankOf(spring.standing), !spring.offTrend, -spring.pDue.value_or(0.0),
                      -spring.measuredLoss.value_or(Force()), spring.place);
}

} // namespace

std::vector<std::size_t> byUrgency(const Assessment& assessment) {
    std::vector<std::size_t> order(assessment.springs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return keyOf(assessment.springs[a]) < keyOf(assessment.springs[b]);
    });
    return order;
}

StandingCounts standingCounts(const Assessment& assessment) {
    StandingCounts counts;
    for (const SpringAssessment& spring : assessment.springs) {
        switch (spring.standing) {
        case Standing::PastLimit:
            ++counts.pastLimit;
            break;
        case Standing::Due:
            ++counts.due;
            break;
        case Standing::Sound:
            ++counts.sound;
            break;
        case Standing::NoTrend:
            ++counts.noTrend;
            break;
        }
    }
    return counts;
}

} // namespace coilbook
