#pragma once

#include <algorithm>
#include <cmath>

namespace coilbook::testing {

/// In how many significant digits a value agrees with the expected one: the log relative error
/// −log10(|value − expected| / |expected|), at most 16; expected must not be 0.
inline double digitsAgreeing(double value, double expected) {
    if (value == expected) {
        return 16.0;
    }
    const double digits = -std::log10(std::abs(value - expected) / std::abs(expected));
    return std::isnan(digits) ? 0.0 : std::min(digits, 16.0);
}

} // namespace coilbook::testing
