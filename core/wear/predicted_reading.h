#pragma once

#include "core/wear/fit.h"
#include "core/wear/mixture.h"

#include <optional>

namespace coilbook::wear {

/// A reading that is about to be taken.
struct NewReading {
    std::size_t life = 0; ///< one that stands in the engine
    /// The session it belongs to, at calendar exposure `Season::now`; empty: nothing has been read
    /// in it, so that its shift is known from its prior alone.
    std::optional<std::size_t> session;
    double fixedVariance = 0.0; ///< vw/m + rho q²/12 of the hits to come
};

/// What the reading will be, in lbf: its posterior predictive distribution over the nodes. It holds
/// the spring's loss and wander up to now, the shift of the session given what has been read in it,
/// and the noise v of sections 1 and 2. A reading that the life has in that session already is not
/// left out. `fit` is one of `season`.
[[nodiscard]] Mixture predictedReading(const NewReading& reading, const Season& season,
                                       const Fit& fit);

} // namespace coilbook::wear
