#include "core/storage/rolling_backups.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QDir>
#include <QFile>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

class RollingBackupsTest : public testing::LogbookTest {
protected:
    [[nodiscard]] QString folder() const { return backupFolderIn(m_folder.path(), path()); }

    static Moment at(int minute) {
        return {QStringLiteral("2026-05-02T19:%1:00.000Z").arg(minute, 2, 10, QLatin1Char('0')),
                120};
    }
};

TEST_F(RollingBackupsTest, ABackupHoldsWhatTheLogbookHolds) {
    addEngine();
    startInspection();
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    const Result<QString> made = addBackup(store(), folder(), at(0));
    ASSERT_TRUE(succeeded(made));
    EXPECT_EQ(*made, folder() + QStringLiteral("/2026-05-02T19-00-00.000Z.coilbook"));
    const Result<LogbookStore> copy = LogbookStore::open(*made, OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(copy));
    EXPECT_EQ(copy->engineLog(m_engine.id)->readings, log().readings);
}

TEST_F(RollingBackupsTest, OlderOnesGoAndWhatWeDidNotNameStays) {
    ASSERT_TRUE(QDir().mkpath(folder()));
    QFile other(folder() + QStringLiteral("/2020 keep this.coilbook"));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly));
    other.close();
    for (int minute = 0; minute < 12; ++minute) {
        ASSERT_TRUE(succeeded(addBackup(store(), folder(), at(minute))));
    }
    const QStringList left = backupsIn(folder());
    ASSERT_EQ(left.size(), 10);
    EXPECT_EQ(left.constFirst(), QStringLiteral("2026-05-02T19-11-00.000Z.coilbook"));
    EXPECT_EQ(left.constLast(), QStringLiteral("2026-05-02T19-02-00.000Z.coilbook"));
    EXPECT_TRUE(other.exists());
    EXPECT_EQ(QDir(folder()).entryList(QDir::Files).size(), 11);
}

TEST_F(RollingBackupsTest, ADamagedLogbookPushesNoGoodBackupOut) {
    addEngine();
    for (int minute = 0; minute < 10; ++minute) {
        ASSERT_TRUE(succeeded(addBackup(store(), folder(), at(minute))));
    }
    const QStringList before = backupsIn(folder());
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE engine SET checksum = checksum + 1"))));
    EXPECT_TRUE(failedWith(StorageFault::Damaged, addBackup(store(), folder(), at(10))));
    EXPECT_EQ(backupsIn(folder()), before);
    EXPECT_EQ(QDir(folder()).entryList(QDir::Files).size(), 10) << "something was left behind";
}

TEST_F(RollingBackupsTest, LogbooksOfOneNameKeepApartInASharedFolder) {
    const QString shared = path(QStringLiteral("shared"));
    const QString here = backupFolderIn(shared, path());
    const QString elsewhere = backupFolderIn(shared, path(QStringLiteral("sub/shop.coilbook")));
    EXPECT_NE(here, elsewhere);
    EXPECT_TRUE(here.startsWith(shared + QStringLiteral("/shop-"))) << qPrintable(here);
    EXPECT_EQ(folder(), path(QStringLiteral("shop.backups")));
}

} // namespace
} // namespace coilbook
