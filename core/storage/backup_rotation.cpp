#include "core/storage/backup_rotation.h"

#include <QSet>

#include <algorithm>
#include <functional>

namespace coilbook {

namespace {

constexpr qsizetype kDayLength = 10;  // yyyy-MM-dd
constexpr qsizetype kMonthLength = 7; // yyyy-MM

/// Adds the newest of each of the `most` latest periods; a period is the start of a name.
void keepPerPeriod(const QStringList& newestFirst, qsizetype length, int most,
                   QSet<QString>& kept) {
    QSet<QString> periods;
    for (const QString& name : newestFirst) {
        const QString period = name.left(length);
        if (periods.size() == most) {
            return;
        }
        if (!periods.contains(period)) {
            periods.insert(period);
            kept.insert(name);
        }
    }
}

} // namespace

QStringList backupsToRemove(QStringList names, const QString& lastVerified) {
    std::sort(names.begin(), names.end(), std::greater<>());
    QSet<QString> kept{lastVerified};
    for (const QString& name : names.mid(0, kLatestBackups)) {
        kept.insert(name);
    }
    keepPerPeriod(names, kDayLength, kDailyBackups, kept);
    keepPerPeriod(names, kMonthLength, kMonthlyBackups, kept);
    names.removeIf([&kept](const QString& name) { return kept.contains(name); });
    return names;
}

} // namespace coilbook
