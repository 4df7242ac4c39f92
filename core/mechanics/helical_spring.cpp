#include "core/mechanics/helical_spring.h"

#include <cmath>
#include <numbers>

namespace coilbook::mechanics {

namespace {

constexpr double kMetresPerMillimetre = 1e-3;

double inMetres(Length length) {
    return length.inMillimetres() * kMetresPerMillimetre;
}

} // namespace

bool HelicalSpring::isPossible() const {
    return wire > Length() && meanCoil > wire && activeCoils > 0.0 && shearModulus > Stress();
}

std::optional<SpringRate> springRate(const HelicalSpring& spring) {
    if (!spring.isPossible()) {
        return std::nullopt;
    }
    const double d = inMetres(spring.wire);
    const double coil = inMetres(spring.meanCoil);
    const double newtonsPerMetre = spring.shearModulus.inPascals() * std::pow(d, 4) /
                                   (8.0 * std::pow(coil, 3) * spring.activeCoils);
    return SpringRate::newtonsPerMillimetre(newtonsPerMetre * kMetresPerMillimetre);
}

std::optional<double> stressFactor(double index) {
    if (!(index > 0.75)) {
        return std::nullopt;
    }
    return (index + 0.5) / (index - 0.75);
}

std::optional<double> wahlFactor(double index) {
    if (!(index > 1.0)) {
        return std::nullopt;
    }
    return (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index;
}

std::optional<Stress> plainShearStress(const HelicalSpring& spring, Force force) {
    if (!spring.isPossible()) {
        return std::nullopt;
    }
    const double d = inMetres(spring.wire);
    return Stress::pascals(8.0 * inMetres(spring.meanCoil) * force.inNewtons() /
                           (std::numbers::pi * std::pow(d, 3)));
}

std::optional<double> surgeFrequency(const HelicalSpring& spring, Density density) {
    if (!spring.isPossible() || !(density > Density())) {
        return std::nullopt;
    }
    const double coil = inMetres(spring.meanCoil);
    const double wave =
        std::sqrt(spring.shearModulus.inPascals() / (2.0 * density.inKilogramsPerCubicMetre()));
    return inMetres(spring.wire) * wave /
           (2.0 * std::numbers::pi * spring.activeCoils * coil * coil);
}

} // namespace coilbook::mechanics
