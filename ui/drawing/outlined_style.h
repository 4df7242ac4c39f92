#pragma once

#include <QProxyStyle>

namespace coilbook {

/// Fusion draws the outlines of fields, check boxes and radio buttons in a shade of the window,
/// which vanishes on a dark ground. This style draws them in the scheme's line colour instead, so
/// that a control can be made out (3:1, WCAG 2.2, 1.4.11). It also leaves out the desktop's own
/// pictures on the buttons of dialogs, which are neither in our weight nor in our colours.
class OutlinedStyle : public QProxyStyle {
    Q_OBJECT
public:
    OutlinedStyle();

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget = nullptr) const override;

    [[nodiscard]] int styleHint(StyleHint hint, const QStyleOption* option = nullptr,
                                const QWidget* widget = nullptr,
                                QStyleHintReturn* data = nullptr) const override;
};

} // namespace coilbook
