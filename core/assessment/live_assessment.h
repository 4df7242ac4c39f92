#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/history.h"
#include "core/testers/reading_corrections.h"

#include <memory>
#include <optional>

namespace coilbook {

/// What can be said of the spring at hand while its reading is being typed.
struct LiveFigures {
    std::optional<Force> expected;         ///< what it should read by its trend; empty without one
    SpringAssessment spring;               ///< with the reading being typed, if there is one
    std::optional<CorrectedReading> typed; ///< the mean of its hits with the one being typed
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

    /// What the record alone says of a fitted spring; empty for any other.
    [[nodiscard]] std::optional<LiveFigures> onRecord(const SpringId& spring) const;

    /// By the fast path, with `typed`: the history of the record and a reading more. The
    /// inspections are not checked for a shift. Empty for a spring that is not fitted.
    [[nodiscard]] std::optional<LiveFigures> withReading(const EngineHistory& typed,
                                                         const SpringId& spring) const;

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
