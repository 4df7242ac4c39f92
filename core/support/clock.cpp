#include "core/support/clock.h"

#include <QDateTime>

namespace coilbook {

Moment SystemClock::now() const {
    const QDateTime local = QDateTime::currentDateTime();
    return {local.toUTC().toString(QStringLiteral("yyyy-MM-ddTHH:mm:ss.zzzZ")),
            local.offsetFromUtc() / 60};
}

QDate SystemClock::today() const {
    return QDate::currentDate();
}

} // namespace coilbook
