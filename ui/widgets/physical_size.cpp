#include "ui/widgets/physical_size.h"

#include <QFontMetricsF>
#include <QScreen>
#include <QWidget>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr double kTargetMillimetres = 9.0;

/// The screen at the shop bench has 1366 x 768 pixels.
constexpr double kLaptopHeight = 768.0;

/// Screens and beamers report sizes from 0 to absurd; between these bounds one is believed.
bool isCredible(double dotsPerInch) {
    return dotsPerInch >= 60.0 && dotsPerInch <= 400.0;
}

} // namespace

double pixelsOf(double millimetres, const QWidget& widget) {
    const double physical = widget.screen()->physicalDotsPerInch();
    const double dotsPerInch = isCredible(physical) ? physical : widget.logicalDpiY();
    return millimetres / kMillimetresPerInch * dotsPerInch;
}

double generousPixelsOf(double millimetres, const QWidget& widget) {
    const double room = widget.screen()->availableSize().height() / kLaptopHeight;
    return pixelsOf(millimetres, widget) * std::clamp(room, 1.0, 1.5);
}

QFont withDigitHeight(QFont font, double height) {
    // Measured large, where hinting hardly matters, then scaled.
    constexpr int kProbe = 200;
    font.setPixelSize(kProbe);
    const double digit = QFontMetricsF(font).tightBoundingRect(QStringLiteral("0")).height();
    const double scale = height / std::max(digit, 1.0);
    font.setPixelSize(std::max(1, static_cast<int>(std::ceil(kProbe * scale))));
    return font;
}

QFont scaled(QFont font, double factor) {
    if (font.pixelSize() > 0) {
        font.setPixelSize(static_cast<int>(std::lround(font.pixelSize() * factor)));
    } else {
        font.setPointSizeF(font.pointSizeF() * factor);
    }
    return font;
}

int targetHeight(const QWidget& widget) {
    const double thumb = pixelsOf(kTargetMillimetres, widget);
    const double text = widget.fontMetrics().height() * 1.4;
    return static_cast<int>(std::ceil(std::max(thumb, text)));
}

} // namespace coilbook
