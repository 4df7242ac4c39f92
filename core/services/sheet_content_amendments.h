#pragma once

#include "core/services/sheet_content.h"

#include <vector>

namespace coilbook {

/// What was amended on the day of the previous inspection or later, newest first; all that was
/// ever amended if there is no previous one. Days of amendments are local to whoever made them. An
/// amendment without a known day is listed: nobody can say that it is older. Amendments of
/// inspections and races that lie beyond the history's day are left out with them.
[[nodiscard]] std::vector<SheetAmendment>
sheetAmendmentsOf(const EngineLog& log, const EngineHistory& history, const Quantities& quantities);

} // namespace coilbook
