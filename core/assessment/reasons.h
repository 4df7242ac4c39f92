#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/wear_estimate.h"
#include "core/domain/history.h"

#include <optional>

namespace coilbook {

/// What the reasons of one spring are made from, besides its assessment so far.
struct ReasonBasis {
    ReasonKind about = ReasonKind::BaselineOnly;      ///< what can be said of its loss at all
    std::optional<WearEstimate::LifeFigures> figures; ///< empty without a fit
};

/// Writes `spring.reasons`: what it lost, why it stands where it stands, when it meets the limit,
/// then the flags. Expects all other members to be filled, and the assessment but for its springs.
void giveReasons(SpringAssessment& spring, const ReasonBasis& basis, const HistoryLife& life,
                 const EngineHistory& history, const Assessment& assessment);

} // namespace coilbook
