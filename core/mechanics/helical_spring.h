#pragma once

#include "core/units/density.h"
#include "core/units/spring_rate.h"
#include "core/units/stress.h"

#include <optional>

namespace coilbook::mechanics {

/// One cylindrical compression spring of round wire, as its maker or a caliper describes it.
struct HelicalSpring {
    Length wire;              ///< diameter of the wire, d
    Length meanCoil;          ///< diameter of a coil, middle of wire to middle of wire, D
    double activeCoils = 0.0; ///< those that move, n; closed ends do not
    Stress shearModulus;      ///< G

    /// All above 0, and the coils wider than the wire.
    [[nodiscard]] bool isPossible() const;

    /// D / d
    [[nodiscard]] double index() const { return meanCoil / wire; }
};

// For an impossible spring the functions below answer nothing.

/// k = G d⁴ / (8 D³ n). EN 13906-1; Budynas and Nisbett, Shigley's Mechanical Engineering Design,
/// equation 10-9.
[[nodiscard]] std::optional<SpringRate> springRate(const HelicalSpring& spring);

/// What the curved wire multiplies the plain shear stress by at the inside of a coil of `index` C:
/// (C + 0.5) / (C − 0.75), EN 13906-1, the same as (4C + 2) / (4C − 3) in Shigley, equation 10-5.
/// Nothing for an index of 0.75 or below.
[[nodiscard]] std::optional<double> stressFactor(double index);

/// The older factor of Wahl: (4C − 1) / (4C − 4) + 0.615 / C. Nothing for an index of 1 or below.
[[nodiscard]] std::optional<double> wahlFactor(double index);

/// 8 D F / (π d³), without a factor (EN 13906-1; the form from memory).
[[nodiscard]] std::optional<Stress> plainShearStress(const HelicalSpring& spring, Force force);

/// The lowest frequency in hertz at which a spring between two plates surges by itself:
/// d √(G / (2ρ)) / (2π n D²), which is ½ √(k / m) with m the mass of the active coils (Shigley,
/// section 10-8) and, in mm, N/mm² and kg/dm³, EN 13906-1's 3560 d √(G / ρ) / (n D²) but for its
/// rounded constant. Precondition: density above 0.
[[nodiscard]] std::optional<double> surgeFrequency(const HelicalSpring& spring, Density density);

} // namespace coilbook::mechanics
