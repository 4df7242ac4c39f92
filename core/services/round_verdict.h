#pragma once

#include "core/services/round.h"
#include "core/support/result.h"

#include <optional>
#include <vector>

namespace coilbook {

/// How a spring stands by measurement alone, the rule of record; the estimate may say more.
enum class MeasuredStanding { Baseline, WithinLimit, PastLimit };

/// What the hits of a stop, with or without one that is being typed, amount to.
struct RoundVerdict {
    Force mean;                         ///< of the hits that count
    std::optional<Force> loss;          ///< the rule of record; empty: this is the baseline
    std::optional<Force> sincePrevious; ///< loss since the previous inspection; negative: a gain;
                                        ///< empty after a level change
    MeasuredStanding standing = MeasuredStanding::Baseline;
    std::optional<double> used; ///< loss as a part of the limit

    bool operator==(const RoundVerdict&) const = default;
};

/// Judges the stop as it stands, and with `typed` as one hit more, taken as a re-test or not.
/// Nothing when no hit counts.
[[nodiscard]] std::optional<RoundVerdict>
verdictOf(const RoundStop& stop, Force limit, std::optional<Force> typed = {}, bool retest = false);

/// Judges the stop as if its hit `hit` read `value` instead (nothing: were withdrawn).
[[nodiscard]] std::optional<RoundVerdict> verdictWith(RoundStop stop, Force limit, std::size_t hit,
                                                      std::optional<TypedForce> value);

/// The reading that a person typed: LogbookFault::NotAReading or ReadingOutOfBounds otherwise.
[[nodiscard]] Result<TypedForce> readingFromText(const QString& text, ForceUnit unit);

/// Why a reading that is allowed should be looked at once more before it is kept.
enum class RoundDoubt {
    AboveTesterRange, ///< more than the tester's full scale
    FarFromSet,       ///< more than kFarFromSet from the median of the other springs
};

/// 12 lbf: more than any spring of a set differs from the rest unless it broke or the gauge was
/// misread (our own choice, no source).
inline constexpr Force kFarFromSet = Force::poundsForce(12.0);

[[nodiscard]] std::vector<RoundDoubt> doubtsOf(Force value, const Tester* tester,
                                               std::optional<Force> medianOfOthers);

/// What is worth knowing before a round is closed; indices of stops in the order of the round.
struct RoundSummary {
    std::size_t tested = 0;
    std::vector<std::size_t> untested;
    std::vector<std::size_t> pastLimit; ///< by measurement

    bool operator==(const RoundSummary&) const = default;
};

[[nodiscard]] RoundSummary summaryOf(const Round& round, Force limit);

} // namespace coilbook
