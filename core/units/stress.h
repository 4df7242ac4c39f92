#pragma once

#include "core/units/force.h"
#include "core/units/length.h"

#include <compare>

namespace coilbook {

/// A force on an area: the shear modulus of wire, the stress in it.
class Stress {
public:
    /// 1 psi in pascals, from the exact lbf and inch: 6894.757 293… (NIST SP 811, appendix B.8).
    static constexpr double kPascalsPerPsi =
        Force::kNewtonsPerPoundForce /
        (Length::kMillimetresPerInch * Length::kMillimetresPerInch * 1e-6);

    constexpr Stress() = default;

    [[nodiscard]] static constexpr Stress pascals(double value) { return Stress(value); }

    [[nodiscard]] static constexpr Stress megapascals(double value) { return Stress(value * 1e6); }

    [[nodiscard]] static constexpr Stress psi(double value) {
        return Stress(value * kPascalsPerPsi);
    }

    [[nodiscard]] constexpr double inPascals() const { return m_pascals; }

    [[nodiscard]] constexpr double inMegapascals() const { return m_pascals / 1e6; }

    [[nodiscard]] constexpr double inPsi() const { return m_pascals / kPascalsPerPsi; }

    constexpr auto operator<=>(const Stress&) const = default;

private:
    explicit constexpr Stress(double pascals)
        : m_pascals(pascals) {}

    double m_pascals = 0.0;
};

} // namespace coilbook
