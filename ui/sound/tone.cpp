#include "ui/sound/tone.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coilbook {

std::vector<std::int16_t> toneOf(double hertz, int milliseconds) {
    constexpr double kLoudness = 0.5 * 32'767.0;
    constexpr double kSwell = 0.01 * kSamplesPerSecond;
    const int samples = kSamplesPerSecond * milliseconds / 1000;
    std::vector<std::int16_t> tone;
    tone.reserve(static_cast<std::size_t>(samples));
    for (int i = 0; i < samples; ++i) {
        const double edge = std::min({1.0, i / kSwell, (samples - 1 - i) / kSwell});
        const double wave = std::sin(2.0 * std::numbers::pi * hertz * i / kSamplesPerSecond);
        tone.push_back(static_cast<std::int16_t>(std::lround(kLoudness * edge * wave)));
    }
    return tone;
}

} // namespace coilbook
