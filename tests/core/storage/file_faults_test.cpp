#include "tests/core/storage/logbook_fixture.h"

#include <QDir>
#include <QFile>
#include <QProcess>

#include <unistd.h>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

class FileFaultsTest : public testing::LogbookTest {
protected:
    void write(const QString& name, const QByteArray& bytes) const {
        QFile file(path(name));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        ASSERT_EQ(file.write(bytes), bytes.size());
    }

    /// Only for files that no connection holds open.
    [[nodiscard]] QByteArray bytesOf(const QString& file) const {
        QFile opened(file);
        EXPECT_TRUE(opened.open(QIODevice::ReadOnly));
        return opened.readAll();
    }

    [[nodiscard]] Result<LogbookStore>
    reopen(OpenMode mode = OpenMode::ReadWrite,
           const QString& name = QStringLiteral("shop.coilbook")) const {
        return LogbookStore::open(path(name), mode);
    }

    void fill() {
        addEngine();
        startInspection();
        for (int hit = 1; hit <= 40; ++hit) {
            ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(hit, 1200 + hit)}, {}})));
        }
    }

    /// Holds a lock on the logbook from another process until it is destroyed.
    class Holder {
    public:
        Holder(const QString& file, const QByteArray& statements) {
            m_process.start(QStringLiteral("sqlite3"), {file});
            m_process.write(statements + "SELECT 'held';\n");
            m_held = m_process.waitForReadyRead(5000);
        }

        Holder(const Holder&) = delete;
        Holder& operator=(const Holder&) = delete;
        Holder(Holder&&) = delete;
        Holder& operator=(Holder&&) = delete;

        ~Holder() {
            m_process.closeWriteChannel();
            m_process.waitForFinished();
        }

        [[nodiscard]] bool held() const { return m_held; }

        /// Ends at once, like a crash.
        void kill() {
            m_process.kill();
            m_process.waitForFinished();
        }

    private:
        QProcess m_process;
        bool m_held = false;
    };

    /// A logbook whose last write was cut short: rows are half written, the journal undoes them.
    void leaveHotJournal() {
        fill();
        closeStore();
        Holder writer(path(), "PRAGMA cache_size=1;\n"
                              "BEGIN IMMEDIATE;\n"
                              "UPDATE engine SET serial = 'half';\n"
                              "CREATE TABLE filler (text TEXT);\n"
                              "INSERT INTO filler WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL"
                              " SELECT i + 1 FROM n WHERE i < 400)"
                              " SELECT printf('%01000d', i) FROM n;\n");
        ASSERT_TRUE(writer.held());
        writer.kill();
        ASSERT_GT(QFileInfo(path() + QStringLiteral("-journal")).size(), 0);
    }
};

TEST_F(FileFaultsTest, AMissingFileIsNotCreated) {
    for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ReadOnly}) {
        EXPECT_TRUE(failedWith(StorageFault::Missing, reopen(mode, QStringLiteral("no.coilbook"))));
    }
    EXPECT_FALSE(QFileInfo::exists(path(QStringLiteral("no.coilbook"))));
    EXPECT_TRUE(failedWith(StorageFault::Missing,
                           LogbookStore::create(path(QStringLiteral("no/such.coilbook")))));
}

TEST_F(FileFaultsTest, CreatingTakesNoPathThatIsTaken) {
    EXPECT_TRUE(failedWith(StorageFault::AlreadyExists, LogbookStore::create(path())));
    write(QStringLiteral("note.txt"), "keep me");
    EXPECT_TRUE(failedWith(StorageFault::AlreadyExists,
                           LogbookStore::create(path(QStringLiteral("note.txt")))));
    EXPECT_EQ(bytesOf(path(QStringLiteral("note.txt"))), QByteArray("keep me"));
}

TEST_F(FileFaultsTest, WhatIsNoLogbookIsRefusedAndUntouched) {
    for (const QByteArray& bytes :
         {QByteArray(), QByteArray("engine,race\r\n"), QByteArray(5000, 'x')}) {
        write(QStringLiteral("other"), bytes);
        for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ReadOnly}) {
            EXPECT_TRUE(
                failedWith(StorageFault::NotALogbook, reopen(mode, QStringLiteral("other"))));
        }
        EXPECT_EQ(bytesOf(path(QStringLiteral("other"))), bytes);
    }
    EXPECT_TRUE(failedWith(StorageFault::NotALogbook,
                           LogbookStore::open(m_folder.path(), OpenMode::ReadWrite)));
}

TEST_F(FileFaultsTest, ADatabaseOfAnotherProgramIsNoLogbook) {
    closeStore();
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("PRAGMA application_id=42"))));
    const QByteArray before = bytesOf(path());
    EXPECT_TRUE(failedWith(StorageFault::NotALogbook, reopen()));
    EXPECT_EQ(bytesOf(path()), before);
}

TEST_F(FileFaultsTest, ANewerLogbookIsLeftAlone) {
    closeStore();
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("PRAGMA user_version=99"))));
    const QByteArray before = bytesOf(path());
    const Result<LogbookStore> newer = reopen();
    ASSERT_TRUE(failedWith(StorageFault::NewerVersion, newer));
    EXPECT_EQ(newer.error().arguments, QStringList{QStringLiteral("99")});
    EXPECT_EQ(bytesOf(path()), before);
}

TEST_F(FileFaultsTest, AFileCutInHalfIsDamaged) {
    fill();
    closeStore();
    ASSERT_TRUE(QFile::resize(path(), QFileInfo(path()).size() / 2));
    EXPECT_TRUE(failedWith(StorageFault::Damaged, reopen()));
}

TEST_F(FileFaultsTest, OpeningAndClosingLeavesTheFileAsItWasAndAlone) {
    fill();
    closeStore();
    const QByteArray before = bytesOf(path());
    for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ReadOnly}) {
        const Result<LogbookStore> opened = reopen(mode);
        ASSERT_TRUE(succeeded(opened));
        EXPECT_TRUE(succeeded(opened->engineLog(m_engine.id)));
    }
    EXPECT_EQ(bytesOf(path()), before);
    EXPECT_EQ(QDir(m_folder.path()).entryList(QDir::Files),
              QStringList{QStringLiteral("shop.coilbook")});
}

TEST_F(FileFaultsTest, NamesWithSignsOfAUriAreOrdinaryNames) {
    const QString odd = path(QStringLiteral("50% ?mode=ro#1 é.coilbook"));
    ASSERT_TRUE(succeeded(LogbookStore::create(odd)));
    EXPECT_TRUE(QFileInfo::exists(odd));
    EXPECT_TRUE(succeeded(LogbookStore::open(odd, OpenMode::ReadWrite)));
}

TEST_F(FileFaultsTest, NothingIsWrittenThroughAReadOnlyStore) {
    addEngine();
    closeStore();
    Result<LogbookStore> opened = reopen(OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(opened));
    EXPECT_TRUE(failedWith(StorageFault::ReadOnly,
                           opened->apply(StartInspection{m_inspection, m_sitting}, m_clock)));
}

TEST_F(FileFaultsTest, AReadOnlyFileOpensForReadingOnly) {
    if (::geteuid() == 0) {
        GTEST_SKIP() << "permissions mean nothing to root";
    }
    addEngine();
    closeStore();
    ASSERT_TRUE(QFile::setPermissions(path(), QFile::ReadOwner));
    EXPECT_TRUE(failedWith(StorageFault::ReadOnly, reopen()));
    const Result<LogbookStore> opened = reopen(OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(opened));
    EXPECT_TRUE(succeeded(opened->engineLog(m_engine.id)));
    EXPECT_TRUE(succeeded(opened->verify()));
}

TEST_F(FileFaultsTest, AReadOnlyFolderIsEnoughForReading) {
    if (::geteuid() == 0) {
        GTEST_SKIP() << "permissions mean nothing to root";
    }
    addEngine();
    closeStore();
    ASSERT_TRUE(QFile::setPermissions(m_folder.path(), QFile::ReadOwner | QFile::ExeOwner));
    EXPECT_TRUE(failedWith(StorageFault::ReadOnly, reopen()));
    const Result<LogbookStore> opened = reopen(OpenMode::ReadOnly);
    EXPECT_TRUE(succeeded(opened));
    EXPECT_TRUE(!opened || succeeded(opened->engineLog(m_engine.id)));
    EXPECT_TRUE(failedWith(StorageFault::ReadOnly,
                           LogbookStore::create(path(QStringLiteral("new.coilbook")))));
    QFile::setPermissions(m_folder.path(), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
}

TEST_F(FileFaultsTest, AFileThatMayNotBeReadSaysSo) {
    if (::geteuid() == 0) {
        GTEST_SKIP() << "permissions mean nothing to root";
    }
    closeStore();
    ASSERT_TRUE(QFile::setPermissions(path(), QFile::Permissions()));
    EXPECT_TRUE(failedWith(StorageFault::NoPermission, reopen()));
    EXPECT_TRUE(failedWith(StorageFault::NoPermission, reopen(OpenMode::ReadOnly)));
}

TEST_F(FileFaultsTest, WhatAnotherProgramHoldsIsLocked) {
    addEngine();
    const Holder holder(path(), "BEGIN EXCLUSIVE;\n");
    ASSERT_TRUE(holder.held());
    EXPECT_TRUE(failedWith(StorageFault::Locked, apply(StartInspection{m_inspection, m_sitting})));
    EXPECT_TRUE(failedWith(StorageFault::Locked, reopen()));
    EXPECT_TRUE(failedWith(StorageFault::Locked, reopen(OpenMode::ReadOnly)));
}

TEST_F(FileFaultsTest, AChangeRefusedByALockIsSavedWhenItIsTriedAgain) {
    addEngine();
    const StartInspection change{m_inspection, m_sitting};
    {
        const Holder holder(path(), "BEGIN IMMEDIATE;\n");
        ASSERT_TRUE(holder.held());
        EXPECT_TRUE(failedWith(StorageFault::Locked, apply(change)));
    }
    EXPECT_TRUE(succeeded(apply(change)));
    EXPECT_EQ(log().inspections.size(), 1U);
}

TEST_F(FileFaultsTest, NothingIsAcknowledgedIntoARemovedFile) {
    addEngine();
    ASSERT_TRUE(QFile::remove(path()));
    EXPECT_TRUE(
        failedWith(StorageFault::Vanished, apply(StartInspection{m_inspection, m_sitting})));
}

TEST_F(FileFaultsTest, NothingIsAcknowledgedIntoAReplacedFile) {
    addEngine();
    ASSERT_TRUE(QFile::rename(path(), path(QStringLiteral("moved.coilbook"))));
    ASSERT_TRUE(succeeded(LogbookStore::create(path())));
    EXPECT_TRUE(
        failedWith(StorageFault::Vanished, apply(StartInspection{m_inspection, m_sitting})));
}

TEST_F(FileFaultsTest, AWriteCutShortIsUndoneByTheNextOpening) {
    leaveHotJournal();
    const QByteArray before = bytesOf(path());
    EXPECT_TRUE(failedWith(StorageFault::NeedsRecovery, reopen(OpenMode::ReadOnly)));
    EXPECT_EQ(bytesOf(path()), before);
    Result<LogbookStore> opened = reopen();
    ASSERT_TRUE(succeeded(opened));
    EXPECT_EQ(opened->engineLog(m_engine.id)->engine.serial, QString());
    EXPECT_TRUE(opened->verify()->findings.empty());
}

} // namespace
} // namespace coilbook
