#include "core/services/round_verdict.h"

#include <algorithm>

namespace coilbook {

std::optional<RoundVerdict> verdictOf(const RoundStop& stop, Force limit,
                                      std::optional<Force> typed, bool retest) {
    Force sum;
    int counted = 0;
    const bool onlyRetests = stop.hasRetest() || (typed && retest);
    for (const RoundHit& hit : stop.hits) {
        if (hit.retest == onlyRetests) {
            sum = sum + hit.value.force();
            ++counted;
        }
    }
    if (typed && retest == onlyRetests) {
        sum = sum + *typed;
        ++counted;
    }
    if (counted == 0) {
        return std::nullopt;
    }
    RoundVerdict verdict;
    verdict.mean = sum / static_cast<double>(counted);
    if (stop.previous && !stop.newLevel) {
        verdict.sincePrevious = stop.previous->mean - verdict.mean;
    }
    if (stop.baseline) {
        const Force reached = stop.newLevel && stop.previous ? stop.previous->mean : verdict.mean;
        verdict.loss = stop.baseline->mean - (reached - stop.levelAdded);
        verdict.used = *verdict.loss / limit;
        verdict.standing = reaches(*verdict.loss, limit) ? MeasuredStanding::PastLimit
                                                         : MeasuredStanding::WithinLimit;
    }
    return verdict;
}

std::optional<RoundVerdict> verdictWith(RoundStop stop, Force limit, std::size_t hit,
                                        std::optional<TypedForce> value) {
    if (hit < stop.hits.size()) {
        if (value) {
            stop.hits[hit].value = *value;
        } else {
            stop.hits.erase(stop.hits.begin() + static_cast<std::ptrdiff_t>(hit));
        }
    }
    return verdictOf(stop, limit);
}

Result<TypedForce> readingFromText(const QString& text, ForceUnit unit) {
    const std::optional<TypedForce> value = TypedForce::parse(text, unit);
    if (!value) {
        return fail(LogbookFault::NotAReading, {text});
    }
    if (!value->isWithinBounds()) {
        return fail(LogbookFault::ReadingOutOfBounds, {text});
    }
    return *value;
}

std::vector<RoundDoubt> doubtsOf(Force value, const Tester* tester,
                                 std::optional<Force> medianOfOthers) {
    std::vector<RoundDoubt> doubts;
    if (tester != nullptr && tester->range && value > tester->range->force()) {
        doubts.push_back(RoundDoubt::AboveTesterRange);
    }
    if (medianOfOthers &&
        std::max(value - *medianOfOthers, *medianOfOthers - value) > kFarFromSet) {
        doubts.push_back(RoundDoubt::FarFromSet);
    }
    return doubts;
}

RoundSummary summaryOf(const Round& round, Force limit) {
    RoundSummary summary;
    summary.tested = round.tested();
    for (std::size_t i = 0; i < round.stops().size(); ++i) {
        const RoundStop& stop = round.stops()[i];
        const std::optional<RoundVerdict> verdict = verdictOf(stop, limit);
        if (!stop.isTested()) {
            summary.untested.push_back(i);
        } else if (verdict && verdict->standing == MeasuredStanding::PastLimit) {
            summary.pastLimit.push_back(i);
        }
    }
    return summary;
}

} // namespace coilbook
