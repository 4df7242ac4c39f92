#pragma once

#include <QFont>

class QWidget;

namespace coilbook {

/// Logical pixels of a length on the screen that shows the widget. A screen that tells nonsense
/// about its size counts as one of its logical resolution.
[[nodiscard]] double pixelsOf(double millimetres, const QWidget& widget);

/// pixelsOf(), and up to half as much again on a screen with more room than a bench laptop has.
[[nodiscard]] double generousPixelsOf(double millimetres, const QWidget& widget);

/// `font` in the size at which its digits are `height` logical pixels tall.
[[nodiscard]] QFont withDigitHeight(QFont font, double height);

/// `font` made larger by a factor, whether its size is in points or pixels.
[[nodiscard]] QFont scaled(QFont font, double factor);

/// The least height of what a dirty thumb shall hit: 9 mm, and no less than the text needs.
[[nodiscard]] int targetHeight(const QWidget& widget);

} // namespace coilbook
