#pragma once

#include <cstdint>
#include <vector>

namespace coilbook {

constexpr int kSamplesPerSecond = 44'100;

/// A sine tone, 16 bit, one channel, that swells and fades over its first and last hundredths of a
/// second so that it does not click. `hertz` below half the sample rate.
[[nodiscard]] std::vector<std::int16_t> toneOf(double hertz, int milliseconds);

} // namespace coilbook
