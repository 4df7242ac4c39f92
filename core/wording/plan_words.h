#pragma once

#include "core/assessment/swap_plan.h"
#include "core/wording/quantities.h"

#include <QString>
#include <QStringList>

namespace coilbook::wording {

/// `2027-03-27 Low Fen`, the day alone where no venue is noted.
[[nodiscard]] QString plannedRace(const PlannedRace& race);

/// What the plan comes to, in whole sentences: what to change before the next race, how many spares
/// to have, what a whole new set would change, and what the plan cannot tell.
[[nodiscard]] QStringList planSummary(const SwapPlan& plan, int onShelf,
                                      const Quantities& quantities);

/// What to look at on a spring before the next race; empty: nothing.
[[nodiscard]] QString planCheck(const PlannedSwap& spring);

} // namespace coilbook::wording
