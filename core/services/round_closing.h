#pragma once

#include "core/assessment/live_assessment.h"
#include "core/services/round_verdict.h"

#include <optional>
#include <vector>

namespace coilbook {

/// What is worth knowing and doing before a round is closed; indices of stops in its order.
struct RoundClosing {
    RoundSummary measured;
    std::vector<std::size_t> repeat;    ///< their hits do not agree with each other
    std::vector<std::size_t> pastLimit; ///< by measurement or by the estimate
    std::vector<std::size_t> due;
    std::optional<RoundCheck> check; ///< what all readings of the round share

    /// The short list, to be tested again while the tester is still at hand: past the limit by
    /// measurement alone, off the trend, outside the band in which they were expected, or hits that
    /// do not agree. A spring that has been tested again is on it only if its re-tests disagree.
    std::vector<std::size_t> retest;

    bool operator==(const RoundClosing&) const = default;
};

/// `assessment` is the newest one of the engine, null or of another state of the log while it is
/// being made; `review` likewise. What they cannot tell is left out, the measured rule stands.
[[nodiscard]] RoundClosing closingOf(const Round& round, Force limit, const Assessment* assessment,
                                     const RoundReview* review);

} // namespace coilbook
