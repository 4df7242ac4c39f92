#include "ui/widgets/date_field.h"

namespace coilbook {

DateField::DateField(QWidget* parent)
    : QDateEdit(QDate::currentDate(), parent) {
    setDisplayFormat(QStringLiteral("yyyy-MM-dd"));
    setCalendarPopup(true);
    setDateRange(QDate(1950, 1, 1), QDate::currentDate().addDays(1));
}

} // namespace coilbook
