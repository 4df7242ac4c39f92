#include "core/statistics/uncertainty.h"

#include "core/statistics/distributions.h"

#include <cmath>

namespace coilbook::statistics {

double rectangularUncertainty(double halfWidth) {
    return halfWidth / std::sqrt(3.0);
}

double resolutionUncertainty(double step) {
    return step / std::sqrt(12.0);
}

std::optional<CombinedUncertainty>
combineUncertainties(std::span<const UncertaintyComponent> components, double level) {
    double variance = 0.0;
    double fourth = 0.0; // Σ u⁴/ν
    for (const UncertaintyComponent& component : components) {
        const double square = component.standard * component.standard;
        if (!std::isfinite(square) || component.standard < 0.0) {
            return std::nullopt;
        }
        variance += square;
        if (component.degreesOfFreedom) {
            fourth += square * square / *component.degreesOfFreedom;
        }
    }
    CombinedUncertainty combined;
    combined.standard = std::sqrt(variance);
    std::optional<double> factor;
    const double upper = 0.5 + level / 2.0;
    if (fourth > 0.0) {
        combined.degreesOfFreedom = variance * variance / fourth;
        // A sum of one component may fall a rounding error short of its own whole number.
        factor = studentTQuantile(upper, std::floor(*combined.degreesOfFreedom + 1e-9));
    } else {
        factor = normalQuantile(upper);
    }
    if (!factor) {
        return std::nullopt;
    }
    combined.coverageFactor = *factor;
    combined.expanded = *factor * combined.standard;
    return combined;
}

} // namespace coilbook::statistics
