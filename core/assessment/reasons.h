#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/line_trend.h"
#include "core/domain/history.h"

#include <optional>

namespace coilbook {

/// What the reasons of one spring are made from, besides its assessment so far.
struct ReasonBasis {
    ReasonKind about = ReasonKind::BaselineOnly; ///< what can be said of its loss at all
    std::optional<OffTrendFinding> offTrend;
};

/// Writes `spring.reasons`: what it lost, why it stands where it stands, when it meets the limit,
/// then the flags. Expects all other members to be filled.
void giveReasons(SpringAssessment& spring, const ReasonBasis& basis, const HistoryLife& life,
                 const EngineHistory& history, const JudgingRules& rules);

} // namespace coilbook
