#include "core/storage/backup_rotation.h"
#include "tests/support/printers.h"

#include <QDate>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

QString at(const QDate& day, int hour) {
    return QStringLiteral("%1T%2-00-00.000Z.coilbook")
        .arg(day.toString(Qt::ISODate))
        .arg(hour, 2, 10, QLatin1Char('0'));
}

/// What is left when a backup is made at each of these times and the rotation runs after each.
QStringList leftAfter(const QStringList& made) {
    QStringList names;
    for (const QString& name : made) {
        names << name;
        for (const QString& old : backupsToRemove(names, name)) {
            names.removeOne(old);
        }
    }
    return names;
}

TEST(BackupRotationTest, TheTenLatestStay) {
    QStringList made;
    for (int hour = 0; hour < 24; ++hour) {
        made << at(QDate(2026, 5, 2), hour);
    }
    EXPECT_EQ(leftAfter(made), made.mid(14));
}

TEST(BackupRotationTest, OneOfEachOfFourteenDaysAndOfTwelveMonthsStays) {
    QStringList made;
    for (QDate day(2024, 1, 1); day <= QDate(2025, 12, 31); day = day.addDays(1)) {
        made << at(day, 8) << at(day, 20);
    }
    QStringList expected;
    // Each month's newest, but for the present month, whose last days stay singly.
    for (int month = 1; month <= 11; ++month) {
        const QDate first(2025, month, 1);
        expected << at(QDate(2025, month, first.daysInMonth()), 20);
    }
    for (int day = 18; day <= 31; ++day) { // fourteen days
        if (day >= 27) {                   // the ten latest are the last five days, both times
            expected << at(QDate(2025, 12, day), 8);
        }
        expected << at(QDate(2025, 12, day), 20);
    }
    EXPECT_EQ(leftAfter(made), expected);
}

TEST(BackupRotationTest, DaysWithoutABackupDoNotCount) {
    QStringList made;
    for (int week = 0; week < 30; ++week) {
        made << at(QDate(2026, 1, 3).addDays(7 * week), 18);
    }
    // Fourteen race days back, and before those the last one of each month since the beginning.
    QStringList expected{at(QDate(2026, 1, 31), 18), at(QDate(2026, 2, 28), 18),
                         at(QDate(2026, 3, 28), 18)};
    expected << made.mid(16);
    EXPECT_EQ(leftAfter(made), expected);
}

TEST(BackupRotationTest, TheLastThatVerifiedStaysWhateverItsAge) {
    QStringList names{at(QDate(2020, 1, 1), 1)};
    for (int month = 1; month <= 12; ++month) {
        for (int day = 1; day <= 3; ++day) {
            names << at(QDate(2025, month, day), 12);
        }
    }
    const QString oldest = names.constFirst();
    EXPECT_TRUE(backupsToRemove(names, names.constLast()).contains(oldest));
    EXPECT_FALSE(backupsToRemove(names, oldest).contains(oldest));
}

} // namespace
} // namespace coilbook
