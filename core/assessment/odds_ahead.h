#pragma once

#include "core/assessment/assessment.h"

#include <array>
#include <cstddef>

namespace coilbook {

/// As far as anything is projected, in races.
inline constexpr int kMostRacesAhead = 60;

/// The probability that a spring's loss has reached the limit 0, 1, … 60 races from now.
using OddsAhead = std::array<double, static_cast<std::size_t>(kMostRacesAhead) + 1>;

/// The largest of the odds up to and including each race. A loss that has reached the limit once
/// counts as having reached it, also where the estimate's spread makes later odds smaller.
[[nodiscard]] OddsAhead runningMaximum(OddsAhead odds);

/// The contract's p_due: the largest of the odds 0 to `racesAhead` races from now. A number outside
/// 0 to 60 is taken as the nearer of the two.
[[nodiscard]] double oddsDueWithin(const OddsAhead& odds, int racesAhead);

/// The contract's races_left: the first race by which the running maximum is 0.1, 0.5 and 0.9.
[[nodiscard]] RacesLeft racesLeftBy(const OddsAhead& odds);

} // namespace coilbook
