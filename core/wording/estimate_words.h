#pragma once

#include "core/wording/quantities.h"

#include <QString>

namespace coilbook::wording {

/// `1.8 lbf low`, `0.9 lbf high`: by how much all readings of an inspection are off.
[[nodiscard]] QString lowOrHigh(Force shift, const Quantities& quantities);

/// That an earlier inspection, after so many races, is off as a whole and need not be touched.
[[nodiscard]] QString shiftAllowedFor(int racesThen, Force shift, const Quantities& quantities);

} // namespace coilbook::wording
