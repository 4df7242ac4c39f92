#include "core/storage/logbook_lock.h"
#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QCoreApplication>
#include <QFile>
#include <QProcess>
#include <QTest>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");

class LockTest : public ProgramTest {};

TEST_F(LockTest, AnImportSaysWhichWindowHoldsTheLogbookAndReadingGoesOn) {
    import(kLogbook, kSeason);
    write(QStringLiteral("a.csv"), kSeason);
    const auto window = LogbookLock::acquire(path(kLogbook));
    ASSERT_TRUE(window.has_value());
    const QByteArray before = read(kLogbook);

    const ProgramRun refused = run({QStringLiteral("import"), kLogbook, QStringLiteral("a.csv")});

    EXPECT_TRUE(failsWith(refused, 1, QByteArray::number(QCoreApplication::applicationPid())));
    EXPECT_EQ(read(kLogbook), before);
    EXPECT_TRUE(succeeds(run({QStringLiteral("assess"), kLogbook})));
    EXPECT_TRUE(succeeds(run({QStringLiteral("verify"), kLogbook})));
    EXPECT_TRUE(succeeds(run({QStringLiteral("export"), kLogbook, QStringLiteral("out")})));
    EXPECT_TRUE(succeeds(run({QStringLiteral("backup"), kLogbook, QStringLiteral("b.coilbook")})));
    EXPECT_TRUE(
        succeeds(run({QStringLiteral("sheet"), kLogbook, QStringLiteral("--engine"),
                      QStringLiteral("Blue"), QStringLiteral("--out"), QStringLiteral("s.pdf")})));
}

TEST_F(LockTest, AWindowHoldsTheLogbookUntilItIsClosed) {
    import(kLogbook, kSeason);
    write(QStringLiteral("a.csv"), kSeason);
    QProcess window;
    startWindow(window, kLogbook);
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return QFile::exists(path(kLogbook + QStringLiteral(".lock"))); }, 20'000));

    const ProgramRun refused = run({QStringLiteral("import"), kLogbook, QStringLiteral("a.csv")});

    EXPECT_TRUE(failsWith(refused, 1, "coilbook"));
    EXPECT_TRUE(failsWith(refused, 1, QByteArray::number(window.processId())));
    EXPECT_TRUE(succeeds(run({QStringLiteral("assess"), kLogbook})));

    // Killed, it leaves its lock file; nobody has to clear that away.
    window.kill();
    ASSERT_TRUE(window.waitForFinished());
    EXPECT_TRUE(succeeds(run({QStringLiteral("import"), kLogbook, QStringLiteral("a.csv")})));
}

TEST_F(LockTest, AnImportLeavesNoLockBehind) {
    import(kLogbook, kSeason);
    import(kLogbook, kSeason);
    EXPECT_EQ(files(), QStringList{kLogbook});
}

} // namespace

} // namespace coilbook::testing
