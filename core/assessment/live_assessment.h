#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/hit_agreement.h"
#include "core/domain/history.h"
#include "core/testers/reading_corrections.h"

#include <memory>
#include <optional>
#include <vector>

namespace coilbook {

/// Whether the springs of a round agree with each other but not with their past (section 6 of the
/// specification of the wear model).
struct RoundCheck {
    double score = 0.0;      ///< z of the session check
    ForceEstimate shift;     ///< what all readings of the round share
    std::size_t springs = 0; ///< read in the round, and before it

    /// Worth looking at the tester before going on: |z| >= 2, from the fourth spring on.
    [[nodiscard]] bool alarms() const;

    bool operator==(const RoundCheck&) const = default;
};

/// What can be said of the spring at hand while its reading is being typed.
struct LiveFigures {
    /// The band in which its next reading in the newest inspection is expected, by all but its own
    /// readings there; empty where the record says nothing.
    std::optional<ForceEstimate> expected;
    std::optional<RoundCheck> check;       ///< of the newest inspection as it is on record
    HitAgreement agreement;                ///< of the tester in use
    SpringAssessment spring;               ///< with the reading being typed, if there is one
    std::optional<CorrectedReading> typed; ///< the mean of its hits with the one being typed
};

/// The part of LiveFigures that depends on what is being typed.
struct TypedFigures {
    SpringAssessment spring;
    std::optional<CorrectedReading> typed;
};

/// What can be said of a whole round as it is on record, before it is closed.
struct RoundReview {
    struct Expectation {
        SpringId spring;
        ForceEstimate band; ///< as LiveFigures::expected, by the readings of all others

        bool operator==(const Expectation&) const = default;
    };

    std::optional<RoundCheck> check;
    HitAgreement agreement;
    std::vector<Expectation> expected; ///< of the springs read in it that have a history

    bool operator==(const RoundReview&) const = default;
};

/// Answers on each key stroke (specification of the wear model, section 10): one full fit is kept,
/// and the history with a reading more is assessed at its mode, axes and events. Pure, immutable,
/// may be moved between threads.
class LiveAssessment {
public:
    /// The full fit of what is on record.
    LiveAssessment(EngineHistory history, const JudgingRules& rules);
    ~LiveAssessment();
    LiveAssessment(LiveAssessment&&) noexcept;
    LiveAssessment& operator=(LiveAssessment&&) noexcept;

    /// What the record alone says of a fitted spring; empty for any other. `tester` is an index of
    /// EngineHistory::testers: the one in use.
    [[nodiscard]] std::optional<LiveFigures> onRecord(const SpringId& spring,
                                                      std::optional<std::size_t> tester = {}) const;

    /// By the fast path, with `typed`: the history of the record and a reading more. The
    /// inspections are not checked for a shift. Empty for a spring that is not fitted.
    [[nodiscard]] std::optional<TypedFigures> withReading(const EngineHistory& typed,
                                                          const SpringId& spring) const;

    /// The band of LiveFigures::expected alone.
    [[nodiscard]] std::optional<ForceEstimate>
    expectedReading(const SpringId& spring, std::optional<std::size_t> tester = {}) const;

    /// Of the newest inspection.
    [[nodiscard]] RoundReview review(std::optional<std::size_t> tester = {}) const;

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
