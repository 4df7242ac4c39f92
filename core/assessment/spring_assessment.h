#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/wear_estimate.h"
#include "core/domain/history.h"

#include <optional>

namespace coilbook {

/// The assessment but for its springs: day, count, rules, and the inspections with their shifts.
[[nodiscard]] Assessment assessInspections(const EngineHistory& history,
                                           const std::optional<WearEstimate>& wear,
                                           const JudgingRules& rules);

/// One fitted life of the history; `wear` is empty where no fit exists, `assessment` that of the
/// inspections.
[[nodiscard]] SpringAssessment assessSpring(std::size_t life, const EngineHistory& history,
                                            const std::optional<WearEstimate>& wear,
                                            const Assessment& assessment);

} // namespace coilbook
