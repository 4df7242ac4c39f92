#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QDir>

namespace coilbook::testing {

namespace {

class RoundTripTest : public ProgramTest {
protected:
    void exportTo(const QString& logbook, const QString& folder) const {
        ASSERT_TRUE(succeeds(run({QStringLiteral("export"), logbook, folder})));
    }
};

// Contract, section 3: columns, order, line ends and digits of the export.
TEST_F(RoundTripTest, GivesBackTheBytesOfASortedSeason) {
    import(QStringLiteral("a.coilbook"), kSeason);
    exportTo(QStringLiteral("a.coilbook"), QStringLiteral("out"));
    EXPECT_EQ(read(QStringLiteral("out/readings.csv")), kSeason);
}

TEST_F(RoundTripTest, IsTheSameBytesThroughExportImportAndExportOfTheDemo) {
    makeDemo();
    exportTo(QStringLiteral("demo.coilbook"), QStringLiteral("one"));
    ASSERT_TRUE(
        succeeds(run({QStringLiteral("import"), QStringLiteral("b.coilbook"),
                      QStringLiteral("one/readings.csv"), QStringLiteral("one/races.csv")})));
    exportTo(QStringLiteral("b.coilbook"), QStringLiteral("two"));
    EXPECT_EQ(read(QStringLiteral("two/readings.csv")), read(QStringLiteral("one/readings.csv")));
    EXPECT_EQ(read(QStringLiteral("two/races.csv")), read(QStringLiteral("one/races.csv")));
    EXPECT_GT(read(QStringLiteral("one/logbook.json")).size(), 0);
}

TEST_F(RoundTripTest, ReplacesAnOlderExportAndLeavesNothingElse) {
    import(QStringLiteral("a.coilbook"), kSeason);
    exportTo(QStringLiteral("a.coilbook"), QStringLiteral("out"));
    write(QStringLiteral("out/readings.csv"), "old");
    exportTo(QStringLiteral("a.coilbook"), QStringLiteral("out"));
    EXPECT_EQ(read(QStringLiteral("out/readings.csv")), kSeason);
    EXPECT_EQ(QDir(path(QStringLiteral("out")))
                  .entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot, QDir::Name),
              QStringList({QStringLiteral("logbook.json"), QStringLiteral("races.csv"),
                           QStringLiteral("readings.csv")}));
}

TEST_F(RoundTripTest, MakesNothingWhenTheLogbookIsNotThere) {
    EXPECT_TRUE(failsWith(
        run({QStringLiteral("export"), QStringLiteral("no.coilbook"), QStringLiteral("out")}), 1,
        "no.coilbook"));
    EXPECT_EQ(files(), QStringList());
}

TEST_F(RoundTripTest, SaysWhenTheFolderIsAFile) {
    import(QStringLiteral("a.coilbook"), kSeason);
    write(QStringLiteral("out"), "a file");
    EXPECT_TRUE(failsWith(
        run({QStringLiteral("export"), QStringLiteral("a.coilbook"), QStringLiteral("out")}), 1,
        "out"));
    EXPECT_EQ(read(QStringLiteral("out")), "a file");
}

} // namespace

} // namespace coilbook::testing
