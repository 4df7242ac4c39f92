#include "ui/widgets/large_label.h"

#include "ui/widgets/physical_size.h"

#include <QEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

// In heights of a digit. The line spacing of some fonts would waste a fifth of a small screen.
constexpr double kAbove = 0.12;
constexpr double kBelow = 0.38; ///< room for the descenders
constexpr double kRoom = kAbove + 1.0 + kBelow;

} // namespace

LargeLabel::LargeLabel(double digitMillimetres, QWidget* parent)
    : QWidget(parent)
    , m_digitMillimetres(digitMillimetres) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void LargeLabel::setText(const QString& text) {
    m_text = text;
    setAccessibleName(text);
    update();
}

void LargeLabel::setColour(const QColor& colour) {
    m_colour = colour;
    update();
}

void LargeLabel::setBold(bool bold) {
    m_bold = bold;
    updateGeometry();
    update();
}

void LargeLabel::setWidest(const QString& text) {
    m_widest = text;
    updateGeometry();
}

QSize LargeLabel::sizeHint() const {
    return {QFontMetrics(largeFont()).horizontalAdvance(m_widest.isEmpty() ? m_text : m_widest),
            roomHeight()};
}

QSize LargeLabel::minimumSizeHint() const {
    return {QFontMetrics(largeFont()).horizontalAdvance(m_widest), roomHeight()};
}

void LargeLabel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    QFont font = largeFont();
    const int wide = QFontMetrics(font).horizontalAdvance(m_text);
    if (wide > width() && width() > 0) {
        font.setPixelSize(std::max(1, font.pixelSize() * width() / wide));
    }
    painter.setFont(font);
    painter.setPen(m_colour.isValid() ? m_colour : palette().color(QPalette::WindowText));
    const double digit = digitHeight();
    painter.drawText(QPointF(0.0, (height() - kRoom * digit) / 2.0 + (kAbove + 1.0) * digit),
                     m_text);
}

void LargeLabel::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) {
        updateGeometry();
    }
    QWidget::changeEvent(event);
}

double LargeLabel::digitHeight() const {
    return generousPixelsOf(m_digitMillimetres, *this);
}

int LargeLabel::roomHeight() const {
    return static_cast<int>(std::ceil(digitHeight() * kRoom));
}

QFont LargeLabel::largeFont() const {
    QFont large = withDigitHeight(font(), digitHeight());
    large.setBold(m_bold);
    return large;
}

} // namespace coilbook
