#pragma once

#include <optional>
#include <span>

namespace coilbook::statistics {

// Uncertainty by JCGM 100:2008 (GUM), clauses as named. All values in one unit of the caller's.

/// What is only known to lie within ± `halfWidth`, anywhere alike: a/√3 (4.3.7).
[[nodiscard]] double rectangularUncertainty(double halfWidth);

/// Reading to a step of `step`: the true value lies within ± half of it, step/√12 (F.2.2.1).
[[nodiscard]] double resolutionUncertainty(double step);

/// One input to a sum, as its contribution to the result (sensitivity already applied).
struct UncertaintyComponent {
    double standard = 0.0;
    std::optional<double> degreesOfFreedom; ///< empty: as good as known exactly (G.4.3)
};

struct CombinedUncertainty {
    double standard = 0.0; ///< root of the sum of squares (5.1.2, independent inputs)
    std::optional<double> degreesOfFreedom; ///< Welch-Satterthwaite (G.4.1); empty: infinite
    double coverageFactor = 0.0; ///< of Student's t, degrees of freedom cut to a whole number
    double expanded = 0.0;       ///< coverageFactor · standard
};

/// `level` is the coverage probability of `expanded`, above 0 and below 1. Nothing where the
/// effective degrees of freedom fall below 1, or a component is negative or not finite.
[[nodiscard]] std::optional<CombinedUncertainty>
combineUncertainties(std::span<const UncertaintyComponent> components, double level = 0.95);

} // namespace coilbook::statistics
