#pragma once

#include "core/units/length.h"

#include <compare>

namespace coilbook {

/// The mass of a cubic metre, of spring wire for instance.
class Density {
public:
    /// 1 lb in kilograms, exact (NIST SP 811, appendix B.8).
    static constexpr double kKilogramsPerPound = 0.45359237;
    static constexpr double kKilogramsPerCubicMetre =
        kKilogramsPerPound / (Length::kMillimetresPerInch * Length::kMillimetresPerInch *
                              Length::kMillimetresPerInch * 1e-9);

    constexpr Density() = default;

    [[nodiscard]] static constexpr Density kilogramsPerCubicMetre(double value) {
        return Density(value);
    }

    [[nodiscard]] static constexpr Density poundsPerCubicInch(double value) {
        return Density(value * kKilogramsPerCubicMetre);
    }

    [[nodiscard]] constexpr double inKilogramsPerCubicMetre() const { return m_kgPerCubicMetre; }

    constexpr auto operator<=>(const Density&) const = default;

private:
    explicit constexpr Density(double kgPerCubicMetre)
        : m_kgPerCubicMetre(kgPerCubicMetre) {}

    double m_kgPerCubicMetre = 0.0;
};

} // namespace coilbook
