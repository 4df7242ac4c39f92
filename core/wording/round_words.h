#pragma once

#include "core/assessment/live_assessment.h"
#include "core/wording/quantities.h"

#include <QString>

namespace coilbook::wording {

/// The band in which a reading is expected, `120.3 to 122.5`, without the unit.
[[nodiscard]] QString expectedReading(const ForceEstimate& band, const Quantities& quantities);

/// That the springs of the round at hand read low or high together, and what to look at now.
[[nodiscard]] QString roundCheck(const RoundCheck& check, const Quantities& quantities);

} // namespace coilbook::wording
