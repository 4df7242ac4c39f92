#include "ui/widgets/whole_number_field.h"

namespace coilbook {

WholeNumberField::WholeNumberField(int least, int most, QWidget* parent)
    : QLineEdit(parent)
    , m_least(least)
    , m_most(most) {
    setInputMethodHints(Qt::ImhDigitsOnly);
}

void WholeNumberField::setValue(const std::optional<int>& value) {
    setText(value ? QString::number(*value) : QString());
}

std::optional<int> WholeNumberField::value() const {
    bool isNumber = false;
    const int number = text().trimmed().toInt(&isNumber);
    return isNumber && number >= m_least && number <= m_most ? std::optional(number) : std::nullopt;
}

} // namespace coilbook
