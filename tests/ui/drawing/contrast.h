#pragma once

#include <QColor>

#include <algorithm>
#include <cmath>

namespace coilbook::testing {

/// Relative luminance of an sRGB colour, 0 to 1. Source: WCAG 2.2 (W3C Recommendation), glossary,
/// "relative luminance"; the threshold 0.04045 is that of IEC 61966-2-1, as its note says.
[[nodiscard]] inline double relativeLuminance(const QColor& colour) {
    const auto linear = [](double channel) {
        return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.red() / 255.0) + 0.7152 * linear(colour.green() / 255.0) +
           0.0722 * linear(colour.blue() / 255.0);
}

/// 1 to 21. Source: WCAG 2.2, glossary, "contrast ratio".
[[nodiscard]] inline double contrast(const QColor& a, const QColor& b) {
    const double one = relativeLuminance(a);
    const double other = relativeLuminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

} // namespace coilbook::testing
