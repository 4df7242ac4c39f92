#include "ui/widgets/quantity_field.h"

#include "core/wording/quantities.h"

#include <QEvent>
#include <QPainter>
#include <QStyleOptionFrame>

namespace coilbook {

namespace {

/// The shortest text with at most `decimals` decimals in the user's locale.
QString shortest(double value, int decimals) {
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    QString text = locale.toString(value, 'f', decimals);
    while (decimals > 0 && text.endsWith(locale.zeroDigit())) {
        text.chop(1);
    }
    if (text.endsWith(locale.decimalPoint())) {
        text.chop(locale.decimalPoint().size());
    }
    return text;
}

} // namespace

QuantityField::QuantityField(ForceUnit unit, QWidget* parent)
    : QLineEdit(parent)
    , m_unit(unit) {
    setInputMethodHints(Qt::ImhFormattedNumbersOnly);
    makeRoomForUnit();
}

QString QuantityField::unitName() const {
    return Quantities(m_unit).unitName();
}

void QuantityField::show(const QString& text) {
    m_shown = text;
    setText(text);
}

void QuantityField::setTyped(const std::optional<TypedForce>& value) {
    m_typed = value;
    m_quantity.reset();
    if (!value) {
        show({});
        return;
    }
    m_quantity = value->force();
    if (value->unit() != m_unit) {
        show(shortest(m_quantity->in(m_unit), 2));
        return;
    }
    show(value->text().replace(QLatin1Char('.'), QLocale().decimalPoint()));
}

void QuantityField::setForce(Force value, int decimals) {
    m_typed.reset();
    m_quantity = value;
    show(shortest(value.in(m_unit), decimals));
}

bool QuantityField::isBlank() const {
    return text().trimmed().isEmpty();
}

bool QuantityField::isEdited() const {
    return text() != m_shown;
}

bool QuantityField::isFault() const {
    return !isBlank() && !force();
}

std::optional<TypedForce> QuantityField::typed() const {
    if (!isEdited() && m_typed) {
        return m_typed;
    }
    const std::optional<TypedForce> read = TypedForce::parse(text().trimmed(), m_unit);
    return read && read->isWithinBounds() ? read : std::nullopt;
}

std::optional<Force> QuantityField::force() const {
    if (!isEdited() && m_quantity) {
        return m_quantity;
    }
    const std::optional<TypedForce> read = typed();
    return read ? std::optional(read->force()) : std::nullopt;
}

void QuantityField::makeRoomForUnit() {
    const int width = fontMetrics().horizontalAdvance(unitName() + QLatin1Char(' '));
    setTextMargins(0, 0, width, 0);
}

void QuantityField::changeEvent(QEvent* event) {
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        makeRoomForUnit();
    }
}

void QuantityField::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    QStyleOptionFrame option;
    initStyleOption(&option);
    const QRect inside =
        style()->subElementRect(QStyle::SE_LineEditContents, &option, this).adjusted(0, 0, -2, 0);
    QPainter painter(this);
    painter.setPen(palette().color(isEnabled() ? QPalette::Active : QPalette::Disabled,
                                   QPalette::PlaceholderText));
    painter.drawText(inside, Qt::AlignRight | Qt::AlignVCenter, unitName());
}

} // namespace coilbook
