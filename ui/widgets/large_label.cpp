#include "ui/widgets/large_label.h"

#include "ui/widgets/physical_size.h"

#include <QEvent>
#include <QPainter>

#include <algorithm>

namespace coilbook {

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
    const QFontMetrics metrics(largeFont());
    return {metrics.horizontalAdvance(m_widest.isEmpty() ? m_text : m_widest), metrics.height()};
}

QSize LargeLabel::minimumSizeHint() const {
    const QFontMetrics metrics(largeFont());
    return {metrics.horizontalAdvance(m_widest), metrics.height()};
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
    painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter, m_text);
}

void LargeLabel::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) {
        updateGeometry();
    }
    QWidget::changeEvent(event);
}

QFont LargeLabel::largeFont() const {
    QFont large = withDigitHeight(font(), pixelsOf(m_digitMillimetres, *this));
    large.setBold(m_bold);
    return large;
}

} // namespace coilbook
