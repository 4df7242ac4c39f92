#include "ui/drawing/outlined_style.h"

#include "ui/drawing/scheme.h"

#include <QPainter>
#include <QStyleOption>

#include <algorithm>

namespace coilbook {

namespace {

constexpr double kCornerRadius = 2.0;

/// A disabled control steps back; one with the focus comes forward.
QColor outlineOf(const QStyleOption& option) {
    if (!option.state.testFlag(QStyle::State_Enabled)) {
        return option.palette.color(QPalette::Disabled, QPalette::WindowText);
    }
    const bool focused = option.state.testFlag(QStyle::State_HasFocus);
    return focused ? option.palette.color(QPalette::Highlight) : schemeFor(option.palette).line;
}

void drawCircle(QPainter& painter, const QRectF& rect) {
    const double radius = (std::min(rect.width(), rect.height()) - 1.0) / 2.0;
    painter.drawEllipse(rect.center(), radius, radius);
}

void drawBox(QPainter& painter, const QRectF& rect) {
    painter.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), kCornerRadius, kCornerRadius);
}

} // namespace

OutlinedStyle::OutlinedStyle()
    : QProxyStyle(QStringLiteral("Fusion")) {}

void OutlinedStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                                  QPainter* painter, const QWidget* widget) const {
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    if (element != PE_IndicatorRadioButton && element != PE_IndicatorCheckBox &&
        element != PE_FrameLineEdit) {
        return;
    }
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(outlineOf(*option), 1.0));
    if (element == PE_IndicatorRadioButton) {
        drawCircle(*painter, option->rect);
    } else {
        drawBox(*painter, option->rect);
    }
    painter->restore();
}

int OutlinedStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                             QStyleHintReturn* data) const {
    return hint == SH_DialogButtonBox_ButtonsHaveIcons
               ? 0
               : QProxyStyle::styleHint(hint, option, widget, data);
}

} // namespace coilbook
