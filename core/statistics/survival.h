#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace coilbook::statistics {

/// How long something ran: until it failed, or until it was last seen still good (censored).
struct Lifetime {
    double time = 0.0;  ///< finite, not negative
    bool ended = false; ///< false: censored at `time`

    bool operator==(const Lifetime&) const = default;
};

/// The curve at one of the times that occur in the data; it holds from there to the next one.
struct SurvivalStep {
    double time = 0.0;
    std::size_t atRisk = 0; ///< just before `time`; who is censored then is still at risk
    std::size_t ended = 0;
    std::size_t censored = 0;
    double survival = 1.0; ///< the product-limit estimate of P(T > time)
    double se = 0.0;       ///< square root of Greenwood's variance
    double low = 1.0;      ///< bounds on the scale log(-log S), which keeps them within 0 and 1
    double high = 1.0;

    bool operator==(const SurvivalStep&) const = default;
};

/// The product-limit estimate (Kaplan and Meier, J. Am. Stat. Assoc. 53 (1958) 457) with
/// Greenwood's variance S² Σ d / (n (n − d)) (Greenwood, Reports on Public Health and Medical
/// Subjects 33 (1926)). Assumes that being censored says nothing about the time still left.
/// Where nobody has failed yet the interval is a point; where all have, Greenwood's variance is 0
/// and says nothing: the lower bound is 0 then and the upper one stays where it was.
struct SurvivalCurve {
    std::size_t n = 0;
    std::size_t ended = 0;
    double confidence = 0.9;          ///< of the intervals, two-sided
    std::vector<SurvivalStep> steps;  ///< ascending times
    std::optional<double> median;     ///< empty: more than half outlast what was seen
    std::optional<double> medianLow;  ///< where the lower bounds reach one half; likewise
    std::optional<double> medianHigh; ///< likewise of the upper bounds

    /// P(T > time); 1 before the first step.
    [[nodiscard]] double survivalAt(double time) const;
};

/// Nothing for an empty set, a time that is negative or not finite, or a confidence that is not
/// strictly between 0 and 1. The median is the first time at which the curve is below one half, or
/// the middle of the stretch on which it is one half exactly.
[[nodiscard]] std::optional<SurvivalCurve> kaplanMeier(std::span<const Lifetime> lifetimes,
                                                       double confidence = 0.9);

/// What one group contributes to a comparison.
struct LogRankGroup {
    std::size_t n = 0;
    std::size_t observed = 0;
    double expected = 0.0; ///< if all groups lasted alike

    bool operator==(const LogRankGroup&) const = default;
};

/// The log-rank comparison of groups (Mantel, Cancer Chemotherapy Reports 50 (1966) 163; Peto and
/// Peto, J. R. Stat. Soc. A 135 (1972) 185), with the hypergeometric variance for ties. The
/// statistic is taken as chi-squared, which needs some failures in every group.
struct LogRank {
    std::vector<LogRankGroup> groups;
    double chiSquared = 0.0;
    std::size_t degreesOfFreedom = 0;
    double p = 1.0; ///< that groups alike would differ by so much
};

/// Nothing where fewer than two groups have an expected failure, or a time is negative or not
/// finite: there is nothing to compare.
[[nodiscard]] std::optional<LogRank> logRank(const std::vector<std::vector<Lifetime>>& groups);

} // namespace coilbook::statistics
