#include "core/storage/logbook_lock.h"
#include "tests/support/printers.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QSysInfo>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <optional>

namespace coilbook {

namespace {

class LogbookLockTest : public ::testing::Test {
protected:
    void SetUp() override {
        ASSERT_TRUE(m_folder.isValid());
        QFile file(logbook());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    }

    [[nodiscard]] QString logbook() const {
        return m_folder.filePath(QStringLiteral("shop.coilbook"));
    }

    [[nodiscard]] QString lockFile() const { return logbook() + QStringLiteral(".lock"); }

    QTemporaryDir m_folder;
};

TEST_F(LogbookLockTest, NamesTheHolderToWhoeverComesSecond) {
    const auto first = LogbookLock::acquire(logbook());
    ASSERT_TRUE(first.has_value());

    const auto second = LogbookLock::acquire(logbook());

    ASSERT_FALSE(second.has_value());
    EXPECT_EQ(second.error().fault, decltype(Error::fault)(StorageFault::HeldByWindow));
    EXPECT_EQ(second.error().file, logbook());
    ASSERT_EQ(second.error().arguments.size(), 4);
    EXPECT_EQ(second.error().arguments[3], QFileInfo(lockFile()).owner());
    EXPECT_EQ(second.error().arguments[1], QSysInfo::machineHostName());
    EXPECT_EQ(second.error().arguments[2], QString::number(QCoreApplication::applicationPid()));
}

TEST_F(LogbookLockTest, IsGivenBackWhenItsOwnerIsGone) {
    {
        const auto first = LogbookLock::acquire(logbook());
        ASSERT_TRUE(first.has_value());
        EXPECT_TRUE(QFile::exists(lockFile()));
    }
    EXPECT_FALSE(QFile::exists(lockFile()));
    EXPECT_TRUE(LogbookLock::acquire(logbook()).has_value());
}

TEST_F(LogbookLockTest, IsTheSameLockUnderAnotherNameOfTheFile) {
    const QString other = m_folder.filePath(QStringLiteral("other.coilbook"));
    ASSERT_TRUE(QFile::link(logbook(), other));
    const auto first = LogbookLock::acquire(logbook());
    ASSERT_TRUE(first.has_value());

    EXPECT_FALSE(LogbookLock::acquire(other).has_value());
}

TEST_F(LogbookLockTest, RespectsALockFromAnotherMachineHoweverOld) {
    QFile file(lockFile());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("4711\ncoilbook\nbench-two\n00000000-0000-4000-8000-000000000001\n"
               "00000000-0000-4000-8000-000000000002\n");
    file.close();
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(file.setFileTime(QDateTime(QDate(2020, 1, 1), QTime(12, 0)),
                                 QFileDevice::FileModificationTime));
    file.close();

    const auto lock = LogbookLock::acquire(logbook());

    ASSERT_FALSE(lock.has_value());
    EXPECT_EQ(lock.error().arguments.mid(0, 3),
              QStringList({QStringLiteral("coilbook"), QStringLiteral("bench-two"),
                           QStringLiteral("4711")}));
    EXPECT_FALSE(LogbookLock::isFree(logbook()));
}

TEST_F(LogbookLockTest, TakesOverTheLockOfADeadProcessOfThisMachine) {
    // What a process leaves that was killed: no process has a number as high as this.
    QFile file(lockFile());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("4194399\ncoilbook\n" + QSysInfo::machineHostName().toUtf8() + "\n" +
               QSysInfo::machineUniqueId() + "\n" + QSysInfo::bootUniqueId() + "\n");
    file.close();

    EXPECT_TRUE(LogbookLock::isFree(logbook()));
    EXPECT_TRUE(LogbookLock::acquire(logbook()).has_value());
}

TEST_F(LogbookLockTest, ALockWhoseFileBelongsToSomebodyElseByNowLeavesThatFile) {
    auto first = LogbookLock::acquire(logbook());
    ASSERT_TRUE(first.has_value());
    EXPECT_TRUE(first->isStanding());
    EXPECT_FALSE(LogbookLock::isFree(logbook()));
    ASSERT_TRUE(QFile::remove(lockFile())); // as with a stick that is pulled out
    EXPECT_FALSE(first->isStanding());
    QFile file(lockFile());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("4711\ncoilbook\nbench-two\n00000000-0000-4000-8000-000000000001\n"
               "00000000-0000-4000-8000-000000000002\n");
    file.close();
    EXPECT_FALSE(first->isStanding());
    first->abandon();
    EXPECT_TRUE(QFile::exists(lockFile()));
}

TEST_F(LogbookLockTest, SaysReadOnlyWhereNoLockCanBeMade) {
    ASSERT_TRUE(QFile::setPermissions(m_folder.path(), QFile::ReadOwner | QFile::ExeOwner));
    if (QFile(m_folder.filePath(QStringLiteral("probe"))).open(QIODevice::WriteOnly)) {
        GTEST_SKIP() << "permissions mean nothing to this user";
    }

    const auto lock = LogbookLock::acquire(logbook());

    ASSERT_FALSE(lock.has_value());
    EXPECT_EQ(lock.error().fault, decltype(Error::fault)(StorageFault::ReadOnly));
    QFile::setPermissions(m_folder.path(), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
}

} // namespace

} // namespace coilbook
