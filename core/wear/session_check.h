#pragma once

#include "core/wear/fit.h"

#include <optional>

namespace coilbook::wear {

/// Whether the newest session reads low or high on all springs (section 6): z of its common shift,
/// predicted from the fit of the sessions before it, which the shift cannot have inflated. Empty
/// with fewer than two sessions or where no fit exists. Alarm: |z| >= 2.
[[nodiscard]] std::optional<double> sessionCheck(const Season& season, const Fit& full);

/// The same with the fit of the earlier sessions made before, while a round is being entered.
[[nodiscard]] std::optional<double> sessionCheck(const Season& season, const Fit& full,
                                                 const Fit& earlier);

} // namespace coilbook::wear
