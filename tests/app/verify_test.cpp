#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QFile>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");

class VerifyTest : public ProgramTest {
protected:
    void SetUp() override {
        ProgramTest::SetUp();
        import(kLogbook, kSeason);
    }

    [[nodiscard]] ProgramRun verify() const { return run({QStringLiteral("verify"), kLogbook}); }

    /// Exit code 1 and one line on standard error; standard output may hold the findings.
    void expectFault() const {
        const ProgramRun result = verify();
        EXPECT_EQ(result.exitCode, 1) << ::testing::PrintToString(result);
        EXPECT_TRUE(result.err.startsWith("coilbook: season.coilbook: "))
            << ::testing::PrintToString(result);
        EXPECT_EQ(result.err.count('\n'), 1) << ::testing::PrintToString(result);
    }
};

TEST_F(VerifyTest, FindsNothingInASoundLogbook) {
    const ProgramRun sound = verify();
    ASSERT_TRUE(succeeds(sound));
    EXPECT_FALSE(sound.out.isEmpty());
    EXPECT_EQ(files(), QStringList{kLogbook});
}

TEST_F(VerifyTest, FindsAReadingChangedBehindTheProgramsBack) {
    // A change that SQLite itself holds for sound: the row's checksum alone tells.
    ASSERT_TRUE(succeeds(
        tool(QStringLiteral("sqlite3"),
             {kLogbook, QStringLiteral("PRAGMA writable_schema=ON;"
                                       "DELETE FROM sqlite_schema WHERE type='trigger';")})));
    ASSERT_TRUE(succeeds(
        tool(QStringLiteral("sqlite3"),
             {kLogbook,
              QStringLiteral("UPDATE reading SET digits = digits + 1 WHERE digits = 12150;")})));
    expectFault();
    EXPECT_TRUE(verify().out.contains("reading"));
}

TEST_F(VerifyTest, SaysWhetherTheLogbookPassedThroughASeal) {
    const ProgramRun sound = verify();
    ASSERT_TRUE(succeeds(sound));
    const QByteArray newest = "Newest seal: ";
    const qsizetype at = sound.out.indexOf(newest);
    ASSERT_GE(at, 0) << sound.out.constData();
    const QByteArray seal = sound.out.mid(at + newest.size()).split('\n').front();
    const auto ask = [&](const QByteArray& noted) {
        return run({QStringLiteral("verify"), kLogbook, QStringLiteral("--seal"),
                    QString::fromLatin1(noted)});
    };
    EXPECT_TRUE(succeeds(ask(seal)));
    EXPECT_TRUE(ask(seal).out.contains("Yes: ")) << ask(seal).out.constData();
    EXPECT_EQ(ask("1:00000000").exitCode, 1);
    EXPECT_EQ(ask("9999" + seal).exitCode, 1);
    EXPECT_TRUE(failsWith(ask("118"), 2, "is not a seal"));
    EXPECT_TRUE(failsWith(ask("118:9f3a"), 2, "is not a seal"));
}

TEST_F(VerifyTest, FindsARowThatAnotherProgramAdded) {
    ASSERT_TRUE(succeeds(
        tool(QStringLiteral("sqlite3"),
             {kLogbook,
              QStringLiteral("INSERT INTO tester (id, name, note, checksum)"
                             " VALUES ('00000000-0000-7000-8000-000000000000', 'X', '', 1);")})));
    expectFault();
    EXPECT_TRUE(verify().out.contains("has no seal")) << verify().out.constData();
}

TEST_F(VerifyTest, FindsATruncatedFile) {
    ASSERT_TRUE(QFile::resize(path(kLogbook), read(kLogbook).size() / 2));
    expectFault();
}

TEST_F(VerifyTest, FindsAPageOfZeros) {
    QByteArray bytes = read(kLogbook);
    bytes.replace(bytes.size() - 4096, 4096, QByteArray(4096, '\0'));
    write(kLogbook, bytes);
    expectFault();
}

TEST_F(VerifyTest, LeavesADamagedFileAsItIs) {
    ASSERT_TRUE(QFile::resize(path(kLogbook), read(kLogbook).size() / 2));
    const QByteArray before = read(kLogbook);
    expectFault();
    EXPECT_EQ(read(kLogbook), before);
    EXPECT_EQ(files(), QStringList{kLogbook});
}

} // namespace

} // namespace coilbook::testing
