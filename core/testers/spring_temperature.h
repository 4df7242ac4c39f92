#pragma once

#include "core/units/force.h"
#include "core/units/temperature.h"

namespace coilbook {

/// How much of its shear modulus a spring loses per °C, in millionths, unless its own setting says
/// otherwise: 0.25e-3 per °C for spring-steel wire. From memory (EN 13906-1), not verified.
inline constexpr int kSofteningOfSpringSteelPpm = 250;

/// The force that a spring read at `temperature` would have at 20 °C. By EN 13906-1 the shear
/// modulus falls in proportion to the temperature, G(t) = G20 · (1 − r · (t − 20 °C)), and the
/// force at a given length with it. The form of the relation is from memory too.
[[nodiscard]] constexpr Force forceAt20(Force read, Temperature temperature, int softeningPpm) {
    constexpr double kReferenceCelsius = 20.0;
    constexpr double kMillionth = 1e-6;
    return read / (1.0 - softeningPpm * kMillionth * (temperature.inCelsius() - kReferenceCelsius));
}

} // namespace coilbook
