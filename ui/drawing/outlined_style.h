#pragma once

#include <QProxyStyle>

namespace coilbook {

/// Fusion draws the outlines of fields, check boxes and radio buttons in a shade of the window,
/// which vanishes on a dark ground. This style draws them in the scheme's line colour instead, so
/// that a control can be made out (3:1, WCAG 2.2, 1.4.11).
class OutlinedStyle : public QProxyStyle {
    Q_OBJECT
public:
    OutlinedStyle();

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget = nullptr) const override;
};

} // namespace coilbook
