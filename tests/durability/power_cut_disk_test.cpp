#include "core/storage/connection.h"
#include "core/storage/schema.h"
#include "tests/core/storage/logbook_fixture.h"
#include "tests/durability/power_cut_disk.h"

#include <QDir>

namespace coilbook::testing {
namespace {

using storage::Connection;

/// The disk itself: it must find what is known to go wrong.
class PowerCutDiskTest : public ::testing::Test {
protected:
    void SetUp() override {
        ASSERT_TRUE(QDir(m_folder.path()).mkdir(QStringLiteral("disk")));
        m_disk = std::make_unique<PowerCutDisk>(m_folder.filePath(QStringLiteral("disk")));
    }

    /// Rows that were acknowledged by single commits in a journal mode before a cut.
    int insertUntilCut(const QString& journalMode) const {
        const auto connection = Connection::open(path(), Connection::Access::ReadWrite);
        if (!connection || !storage::setAndReadBack(**connection, QStringLiteral("journal_mode"),
                                                    journalMode, journalMode)) {
            return 0;
        }
        int acknowledged = 0;
        while (acknowledged < kRows &&
               (*connection)->run(QStringLiteral("INSERT INTO t VALUES (?)"), {acknowledged})) {
            ++acknowledged;
        }
        return acknowledged;
    }

    [[nodiscard]] int rowsThere() const {
        const auto connection = Connection::open(path(), Connection::Access::ReadWrite);
        return (*connection)->scalar(QStringLiteral("SELECT count(*) FROM t"))->toInt();
    }

    /// Cuts the power at each operation in turn and counts the runs that lost a row.
    int runsThatLost(const QString& journalMode) {
        m_disk->setContents({});
        {
            const auto made = Connection::open(path(), Connection::Access::Create);
            EXPECT_TRUE(succeeded((*made)->run(QStringLiteral("CREATE TABLE t (n INTEGER)"))));
        }
        const auto begin = m_disk->contents();
        m_disk->setContents(begin);
        EXPECT_EQ(insertUntilCut(journalMode), kRows);
        const qint64 operations = m_disk->operations();
        int lost = 0;
        for (qint64 at = 1; at <= operations; ++at) {
            m_disk->setContents(begin);
            m_disk->cutAt(at);
            const int acknowledged = insertUntilCut(journalMode);
            m_disk->powerOn(PowerCutDisk::Survivors::SyncedOnly, 0);
            lost += rowsThere() < acknowledged ? 1 : 0;
        }
        return lost;
    }

    [[nodiscard]] QString path() const { return m_folder.filePath(QStringLiteral("disk/rows.db")); }

    static constexpr int kRows = 5;
    QTemporaryDir m_folder;
    std::unique_ptr<PowerCutDisk> m_disk;
};

// SQLite's documentation (sqlite.org/pragma.html#pragma_synchronous): with a DELETE journal and
// FULL, a power loss after a commit may roll that commit back; EXTRA and the TRUNCATE journal are
// safe.
TEST_F(PowerCutDiskTest, FindsTheJournalModeThatMayLoseTheLastCommit) {
    EXPECT_GT(runsThatLost(QStringLiteral("delete")), 0);
    EXPECT_EQ(runsThatLost(QStringLiteral("truncate")), 0);
}

TEST_F(PowerCutDiskTest, KeepsFilesOfOtherFoldersOnTheRealDisk) {
    const QString elsewhere = m_folder.filePath(QStringLiteral("real.db"));
    {
        const auto made = Connection::open(elsewhere, Connection::Access::Create);
        ASSERT_TRUE(succeeded((*made)->run(QStringLiteral("CREATE TABLE t (n INTEGER)"))));
    }
    EXPECT_GT(QFileInfo(elsewhere).size(), 0);
    EXPECT_TRUE(m_disk->names().isEmpty());
}

} // namespace
} // namespace coilbook::testing
