#pragma once

#include "core/assessment/assessment.h"

#include <optional>

namespace coilbook {

/// What a standing is decided from, whichever model it comes from.
struct Evidence {
    std::optional<Force> measuredLoss; ///< the rule of record
    std::optional<double> pPastLimit;
    std::optional<double> pDue;
    bool hasTrend = false; ///< enough inspections to call a spring sound
};

struct Verdict {
    Standing standing = Standing::NoTrend;
    std::optional<PastBy> pastBy; ///< set if and only if past the limit

    bool operator==(const Verdict&) const = default;
};

/// The contract's ladder, the first rung that holds: past the limit (measured, or estimated with at
/// least the probability that the caution asks for), due (as likely as not within the races ahead),
/// no trend, sound.
[[nodiscard]] Verdict judge(const Evidence& evidence, const JudgingRules& rules);

} // namespace coilbook
