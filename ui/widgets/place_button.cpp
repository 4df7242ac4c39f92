#include "ui/widgets/place_button.h"

#include "ui/drawing/scheme.h"

#include <QEvent>
#include <QPainter>
#include <QStyleOptionFocusRect>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr double kLeastMillimetres = 9.0;
constexpr double kMillimetresPerInch = 25.4;

} // namespace

PlaceButton::PlaceButton(Picture picture, const QString& word, const QString& key, QWidget* parent)
    : QAbstractButton(parent)
    , m_key(key) {
    setIcon(coilbook::icon(picture));
    setText(word);
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(tr("%1, key %2").arg(word, key));
}

QFont PlaceButton::keyFont() const {
    QFont small = font();
    small.setPointSizeF(small.pointSizeF() * 0.8);
    return small;
}

int PlaceButton::unit() const {
    return fontMetrics().height() / 3;
}

int PlaceButton::pictureSide() const {
    return fontMetrics().height();
}

QSize PlaceButton::sizeHint() const {
    const int least =
        static_cast<int>(std::ceil(kLeastMillimetres / kMillimetresPerInch * logicalDpiY()));
    const int words =
        fontMetrics().horizontalAdvance(text()) + QFontMetrics(keyFont()).horizontalAdvance(m_key);
    return {pictureSide() + words + 8 * unit(), std::max(least, fontMetrics().height() * 2)};
}

QSize PlaceButton::minimumSizeHint() const {
    return sizeHint();
}

void PlaceButton::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void PlaceButton::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void PlaceButton::paintEvent(QPaintEvent*) {
    const Scheme scheme = schemeFor(palette());
    QPainter painter(this);
    if (isChecked() && isEnabled()) {
        painter.fillRect(rect(), palette().color(QPalette::Window));
        painter.fillRect(QRect(0, 0, width(), std::max(3, unit() / 2)), scheme.accent);
    } else if (underMouse() && isEnabled()) {
        painter.fillRect(rect(), scheme.grid);
    }
    const int side = pictureSide();
    int x = 2 * unit();
    const QIcon::Mode mode = isEnabled() ? QIcon::Normal : QIcon::Disabled;
    QAbstractButton::icon().paint(&painter, QRect(x, (height() - side) / 2, side, side),
                                  Qt::AlignCenter, mode);
    x += side + unit();
    const QPalette::ColorGroup group = isEnabled() ? QPalette::Active : QPalette::Disabled;
    painter.setPen(palette().color(group, QPalette::WindowText));
    const int wordWidth = fontMetrics().horizontalAdvance(text());
    painter.drawText(QRect(x, 0, wordWidth, height()), Qt::AlignVCenter | Qt::AlignLeft, text());
    x += wordWidth + unit();

    const QFontMetrics keyMetrics(keyFont());
    const int chipHeight = keyMetrics.height() + 2;
    const QRectF chip(x + 0.5, std::floor((height() - chipHeight) / 2.0) + 0.5,
                      keyMetrics.horizontalAdvance(m_key) + 2 * unit() - 1, chipHeight - 1);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(keyFont());
    painter.setPen(scheme.mutedText);
    painter.drawRoundedRect(chip, 3, 3);
    painter.drawText(chip, Qt::AlignCenter, m_key);

    if (hasFocus()) {
        QStyleOptionFocusRect focus;
        focus.initFrom(this);
        focus.rect = rect().adjusted(2, 2, -2, -2);
        style()->drawPrimitive(QStyle::PE_FrameFocusRect, &focus, &painter, this);
    }
}

} // namespace coilbook
