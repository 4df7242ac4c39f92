#pragma once

#include <QStringList>

namespace coilbook {

/// How many automatic backups are kept: the latest, then one for each day and each month.
inline constexpr int kLatestBackups = 10;
inline constexpr int kDailyBackups = 14;
inline constexpr int kMonthlyBackups = 12;

/// Which of these backups have to go. A backup's name starts with its moment in UTC,
/// `yyyy-MM-dd…`, and the rest sorts as text. Kept are the latest ones, and the newest of each of
/// the latest days and months that have one; `lastVerified` is kept whatever its age.
[[nodiscard]] QStringList backupsToRemove(QStringList names, const QString& lastVerified);

} // namespace coilbook
