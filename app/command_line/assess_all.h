#pragma once

#include "app/command_line/option_values.h"
#include "core/assessment/assessment.h"
#include "core/storage/logbook_store.h"
#include "core/support/result.h"

#include <vector>

namespace coilbook {

/// The assessments of these engines in their order. The logbook is read in the calling thread, one
/// engine after the other, while all cores work on those read before.
[[nodiscard]] Result<std::vector<Assessment>> assessAll(const LogbookStore& store,
                                                        const std::vector<EngineSummary>& engines,
                                                        const JudgingRequest& request);

} // namespace coilbook
