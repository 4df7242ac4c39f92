#include "tests/app/program.h"

namespace coilbook::testing {

namespace {

// Each row of `readings.csv` below is checked by the contract's section 3; columns as in kHeader.
const QByteArray kHeader =
    "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,hit\n";
const QByteArray kGood = "Blue,2026-03-01,0,1,I,S-01,121.5,1\n";

struct BadInput {
    const char* what;
    QByteArray csv;
    QByteArrayList said; ///< line and column where there are such
};

void PrintTo(const BadInput& input, std::ostream* stream) {
    *stream << input.what;
}

BadInput row(const char* what, const QByteArray& cells, const QByteArray& column) {
    return {what, kHeader + kGood + cells + "\n", {"bad.csv: line 3", column}};
}

class BadInputTest : public ProgramTest, public ::testing::WithParamInterface<BadInput> {};

TEST_P(BadInputTest, IsRefusedWithFileLineAndColumnAndMakesNoLogbook) {
    write(QStringLiteral("bad.csv"), GetParam().csv);
    const ProgramRun bad =
        run({QStringLiteral("import"), QStringLiteral("new.coilbook"), QStringLiteral("bad.csv")});
    for (const QByteArray& part : GetParam().said) {
        EXPECT_TRUE(failsWith(bad, 1, part));
    }
    EXPECT_EQ(files(), QStringList{QStringLiteral("bad.csv")});
}

INSTANTIATE_TEST_SUITE_P(
    Import, BadInputTest,
    ::testing::Values(
        BadInput{"AnEmptyFile", "", {"bad.csv", "empty"}},
        row("NotANumber", "Blue,2026-03-01,0,1,E,S-02,strong,1", "reading_lbf"),
        row("ANegativeReading", "Blue,2026-03-01,0,1,E,S-02,-121.5,1", "reading_lbf"),
        row("AReadingOfZero", "Blue,2026-03-01,0,1,E,S-02,0,1", "reading_lbf"),
        row("AnAbsurdReading", "Blue,2026-03-01,0,1,E,S-02,1000.1,1", "reading_lbf"),
        row("AnExponent", "Blue,2026-03-01,0,1,E,S-02,1e2,1", "reading_lbf"),
        row("NoReading", "Blue,2026-03-01,0,1,E,S-02,,1", "reading"),
        row("AnUnknownCylinder", "Blue,2026-03-01,0,9,E,S-02,121,1", "cylinder"),
        row("AnUnknownValve", "Blue,2026-03-01,0,1,X,S-02,121,1", "valve"),
        row("ADateInTheFuture", "Blue,2199-01-01,0,1,E,S-02,121,1", "inspected_on"),
        row("ADateTooEarly", "Blue,1949-12-31,0,1,E,S-02,121,1", "inspected_on"),
        row("AnImpossibleDate", "Blue,2026-02-30,0,1,E,S-02,121,1", "inspected_on"),
        BadInput{"ARaceCountGoingBack",
                 kHeader + "Blue,2026-03-01,4,1,I,S-01,121.5,1\n" +
                     "Blue,2026-03-10,3,1,I,S-01,121,1\n",
                 {"bad.csv: line 3", "engine_races"}},
        row("ADuplicateHit", "Blue,2026-03-01,0,1,I,S-01,122,1", "hit"),
        row("ASpringAtTwoPlaces", "Blue,2026-03-01,0,1,E,S-01,121,2", "S-01"),
        row("NoEngine", ",2026-03-01,0,1,E,S-02,121,1", "engine"),
        row("AnEngineThatDiffersInCaseOnly", "BLUE,2026-03-01,0,1,E,S-02,121,1", "engine"),
        row("ARowTooShort", "Blue,2026-03-01,0,1,E,S-02", "line 3"),
        row("ARowTooLong", "Blue,2026-03-01,0,1,E,S-02,121,1,2", "line 3"),
        row("AQuoteNeverClosed", "\"Blue,2026-03-01,0,1,E,S-02,121,1", "quote"),
        row("ANulByte", QByteArray("Bl\0ue,2026-03-01,0,1,E,S-02,121,1", 35), "line 3"),
        row("InvalidUtf8", "Bl\xff\xfeue,2026-03-01,0,1,E,S-02,121,1", "line 3"),
        BadInput{"ABlankLineInside", kHeader + "\n" + kGood, {"bad.csv: line 2"}},
        BadInput{"AnUnknownColumn",
                 "engine,inspected_on,engine_races,cylinder,valve,spring,reading_kg\n",
                 {"bad.csv: line 1", "reading_kg"}},
        BadInput{"AMissingColumn",
                 "engine,inspected_on,engine_races,cylinder,valve,reading_lbf\n",
                 {"bad.csv: line 1", "spring"}},
        BadInput{
            "NoExchangeFileAtAll", "Dear John,\nthe springs are fine.\n", {"bad.csv: line 1"}}),
    [](const auto& one) { return one.param.what; });

class ImportFaultsTest : public ProgramTest {};

TEST_F(ImportFaultsTest, NamesTheFirstOfSeveralAndCountsTheOthers) {
    write(QStringLiteral("bad.csv"), kHeader + "Blue,2026-03-01,0,1,I,S-01,x,1\n" +
                                         "Blue,2026-03-01,0,1,E,S-02,y,1\n" +
                                         "Blue,2026-03-01,0,2,I,S-03,z,1\n");
    const ProgramRun bad =
        run({QStringLiteral("import"), QStringLiteral("new.coilbook"), QStringLiteral("bad.csv")});
    EXPECT_TRUE(failsWith(bad, 1, "line 2"));
    EXPECT_TRUE(failsWith(bad, 1, "(and 2 more)"));
}

TEST_F(ImportFaultsTest, ShowsControlCharactersOfACellEscaped) {
    write(QStringLiteral("bad.csv"), kHeader + "Blue,2026-03-01,0,1,I,S-01,1\x1b[2J,1\n");
    EXPECT_TRUE(failsWith(
        run({QStringLiteral("import"), QStringLiteral("new.coilbook"), QStringLiteral("bad.csv")}),
        1, "\\u{1B}[2J"));
}

TEST_F(ImportFaultsTest, CountsTheLinesInsideQuotes) {
    write(QStringLiteral("bad.csv"),
          "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,note\n"
          "Blue,2026-03-01,0,1,I,S-01,121.5,\"two\nlines\"\n"
          "Blue,2026-03-01,0,1,E,S-02,oops,\n");
    EXPECT_TRUE(failsWith(
        run({QStringLiteral("import"), QStringLiteral("new.coilbook"), QStringLiteral("bad.csv")}),
        1, "line 4"));
}

} // namespace

} // namespace coilbook::testing
