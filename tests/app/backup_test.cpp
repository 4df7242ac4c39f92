#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QProcess>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");
const QString kCopy = QStringLiteral("copy.coilbook");

class BackupTest : public ProgramTest {
protected:
    void SetUp() override {
        ProgramTest::SetUp();
        import(kLogbook, kSeason);
    }

    [[nodiscard]] ProgramRun backUp() const {
        return run({QStringLiteral("backup"), kLogbook, kCopy});
    }

    [[nodiscard]] QByteArray assessment(const QString& logbook) const {
        return run({QStringLiteral("assess"), logbook, QStringLiteral("--json")}).out;
    }
};

TEST_F(BackupTest, MakesACopyThatSaysTheSame) {
    ASSERT_TRUE(succeeds(backUp()));
    EXPECT_EQ(files(), QStringList({kCopy, kLogbook}));
    EXPECT_TRUE(succeeds(run({QStringLiteral("verify"), kCopy})));
    EXPECT_EQ(assessment(kCopy), assessment(kLogbook));
}

TEST_F(BackupTest, RefusesATargetThatExists) {
    write(kCopy, "precious");
    EXPECT_TRUE(failsWith(backUp(), 1, "copy.coilbook"));
    EXPECT_EQ(read(kCopy), "precious");
    EXPECT_EQ(files(), QStringList({kCopy, kLogbook}));
}

TEST_F(BackupTest, MakesNothingOfAMissingLogbook) {
    EXPECT_TRUE(failsWith(run({QStringLiteral("backup"), QStringLiteral("no.coilbook"), kCopy}), 1,
                          "no.coilbook"));
    EXPECT_EQ(files(), QStringList{kLogbook});
}

TEST_F(BackupTest, WorksWhileAnotherProcessHoldsTheLogbookOpen) {
    QProcess holder;
    holder.start(QStringLiteral("sqlite3"), {path(kLogbook)});
    ASSERT_TRUE(holder.waitForStarted());
    holder.write("BEGIN; SELECT 'rows', count(*) FROM reading;\n");
    ASSERT_TRUE(holder.waitForReadyRead());
    ASSERT_EQ(holder.readAllStandardOutput().trimmed(), "rows|7");

    EXPECT_TRUE(succeeds(backUp()));

    holder.closeWriteChannel();
    ASSERT_TRUE(holder.waitForFinished());
    EXPECT_EQ(assessment(kCopy), assessment(kLogbook));
}

} // namespace

} // namespace coilbook::testing
