#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"

namespace coilbook::testing {

/// An invented V8 with a season behind it: eight inspections over seven races, one spring past the
/// limit, one close to it, one swapped, one over-revved race, one amended reading.
[[nodiscard]] EngineLog reviewSample();

/// The same as inspected `inspections` times only.
[[nodiscard]] EngineLog reviewSample(int inspections);

} // namespace coilbook::testing
