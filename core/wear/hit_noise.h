#pragma once

#include "core/units/typed_force.h"

#include <span>
#include <vector>

namespace coilbook::wear {

/// The hits of one spring in one session by one tester, lbf, before or after the screen.
struct HitGroup {
    std::size_t life = 0;
    std::size_t session = 0;
    std::size_t tester = 0; ///< of the first hit
    std::vector<double> hits;
    bool kept = false; ///< by the user: none of them is screened
};

/// Repeatability and rounding of one tester, as plugged into the variance of a cell (section 1,
/// 'Noise').
struct HitNoise {
    double graduation = 0.0;          ///< q, lbf
    int degreesOfFreedom = 0;         ///< sum (m-1) over its cells
    double withinVariance = 0.0;      ///< vw, lbf²
    double roundingCorrelation = 1.0; ///< rho

    /// vw/m + rho q²/12 for a cell of `hits` kept hits.
    [[nodiscard]] double fixedVariance(int hits) const;
};

/// Graduation of a tester from what it read: the largest of 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10 in the
/// unit read of which all readings are multiples, else one unit of the last decimal; lbf. 0 without
/// readings.
[[nodiscard]] double graduationOf(std::span<const TypedForce> readings);

/// R(s): correlation of the rounding errors of two hits whose true values differ with SD s, at
/// graduation q (section 1; a series of eight terms).
[[nodiscard]] double roundingCorrelation(double s, double q);

/// vw and rho from the kept hits of one tester.
[[nodiscard]] HitNoise hitNoiseOf(const std::vector<HitGroup>& groups, std::size_t tester,
                                  double graduation);

} // namespace coilbook::wear
