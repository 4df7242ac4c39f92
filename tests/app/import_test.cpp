#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QFile>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");
const QString kImport = QStringLiteral("import");

class ImportTest : public ProgramTest {
protected:
    [[nodiscard]] QByteArray assessment() const {
        const ProgramRun json = run({QStringLiteral("assess"), kLogbook, QStringLiteral("--json")});
        EXPECT_TRUE(succeeds(json));
        return json.out;
    }
};

TEST_F(ImportTest, MakesTheLogbookIfItIsNotThere) {
    write(QStringLiteral("a.csv"), kSeason);
    const ProgramRun imported = run({kImport, kLogbook, QStringLiteral("a.csv")});
    ASSERT_TRUE(succeeds(imported));
    EXPECT_TRUE(imported.out.contains("7"));
    EXPECT_EQ(files(), QStringList({QStringLiteral("a.csv"), kLogbook}));
}

TEST_F(ImportTest, ChangesNothingTheSecondTimeAndSaysSo) {
    write(QStringLiteral("a.csv"), kSeason);
    ASSERT_TRUE(succeeds(run({kImport, kLogbook, QStringLiteral("a.csv")})));
    const QByteArray before = assessment();
    const ProgramRun again = run({kImport, kLogbook, QStringLiteral("a.csv")});
    ASSERT_TRUE(succeeds(again));
    EXPECT_FALSE(again.out.isEmpty());
    EXPECT_EQ(assessment(), before);
}

TEST_F(ImportTest, TakesFilesInAnyOrder) {
    const QByteArray header = kSeason.left(kSeason.indexOf('\n') + 1);
    const QByteArray rows = kSeason.mid(header.size());
    const qsizetype cut = rows.indexOf("Blue,2026-03-15");
    write(QStringLiteral("early.csv"), header + rows.left(cut));
    write(QStringLiteral("late.csv"), header + rows.mid(cut));
    write(QStringLiteral("races.csv"), "engine,race,raced_on\nBlue,1,2026-03-05\n");
    ASSERT_TRUE(succeeds(run({kImport, kLogbook, QStringLiteral("races.csv"),
                              QStringLiteral("late.csv"), QStringLiteral("early.csv")})));
    const QByteArray oneWay = assessment();
    ASSERT_TRUE(QFile::remove(path(kLogbook)));
    ASSERT_TRUE(succeeds(run({kImport, kLogbook, QStringLiteral("early.csv"),
                              QStringLiteral("races.csv"), QStringLiteral("late.csv")})));
    EXPECT_EQ(assessment(), oneWay);
}

TEST_F(ImportTest, TakesNothingOfSeveralFilesWhenOneIsWrong) {
    write(QStringLiteral("a.csv"), kSeason);
    write(QStringLiteral("b.csv"), "engine,race,raced_on\nBlue,one,2026-03-05\n");
    EXPECT_TRUE(failsWith(
        run({kImport, kLogbook, QStringLiteral("a.csv"), QStringLiteral("b.csv")}), 1, "b.csv"));
    EXPECT_EQ(files(), QStringList({QStringLiteral("a.csv"), QStringLiteral("b.csv")}));
}

TEST_F(ImportTest, LeavesALogbookThatIsThereAsItWasWhenTheInputIsWrong) {
    import(kLogbook, kSeason);
    const QByteArray before = read(kLogbook);
    write(QStringLiteral("b.csv"), kSeason + "Blue,2026-04-09,7,1,I,S-01,117.5,,1,,,,,\r\n"
                                             "Blue,2026-04-09,7,1,E,S-02,oops,,1,,,,,\r\n");
    const ProgramRun bad = run({kImport, kLogbook, QStringLiteral("b.csv")});
    EXPECT_TRUE(failsWith(bad, 1, "line 10"));
    EXPECT_TRUE(failsWith(bad, 1, "reading_lbf"));
    EXPECT_EQ(read(kLogbook), before);
}

TEST_F(ImportTest, RefusesAReadingThatContradictsTheStoredOne) {
    import(kLogbook, kSeason);
    QByteArray other = kSeason;
    other.replace("121.50", "122.75");
    write(QStringLiteral("b.csv"), other);
    const ProgramRun bad = run({kImport, kLogbook, QStringLiteral("b.csv")});
    EXPECT_TRUE(failsWith(bad, 1, "122.75"));
    EXPECT_TRUE(failsWith(bad, 1, "121.50"));
}

TEST_F(ImportTest, NamesAnInputThatIsNotThere) {
    EXPECT_TRUE(failsWith(run({kImport, kLogbook, QStringLiteral("none.csv")}), 1, "none.csv"));
    EXPECT_EQ(files(), QStringList());
}

TEST_F(ImportTest, DoesNotTouchAFileThatIsNoLogbook) {
    write(QStringLiteral("a.csv"), kSeason);
    write(kLogbook, "a letter");
    EXPECT_TRUE(failsWith(run({kImport, kLogbook, QStringLiteral("a.csv")}), 1, "season.coilbook"));
    EXPECT_EQ(read(kLogbook), "a letter");
    EXPECT_EQ(files(), QStringList({QStringLiteral("a.csv"), kLogbook}));
}

TEST_F(ImportTest, TakesAHeaderAloneAsValidAndEmpty) {
    import(kLogbook, kSeason.left(kSeason.indexOf('\n') + 1));
    EXPECT_EQ(run({QStringLiteral("assess"), kLogbook, QStringLiteral("--json")}).json().size(), 0);
}

} // namespace

} // namespace coilbook::testing
