#include "core/exchange/exchange_parser.h"
#include "tests/core/exchange/exchange_fixture.h"
#include "tests/support/printers.h"

namespace coilbook {
namespace {

using namespace std::string_literals;

using Fault = decltype(Error::fault);

const std::string kHeader = "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,"
                            "reading_n,hit,retest,tester,inspector,note,engine_temp_c\n";
const std::string kRaceHeader = "engine,race,raced_on,venue,laps,peak_rpm,over_rev,note\n";

class ExchangeParserTest : public testing::ExchangeFixture {
protected:
    void read(const std::string& bytes) {
        EXPECT_TRUE(readExchangeFiles({write(QStringLiteral("table.csv"), bytes)}, m_clock, {},
                                      m_input, m_faults));
    }

    ExchangeInput m_input;
    FaultLog m_faults;
};

TEST_F(ExchangeParserTest, ReadsAFullRowOfReadings) {
    read(kHeader +
         "Blue,2026-05-02,9,3,exhaust,S-27,117.50,,2,1,Bench 160,Kim,\"rough, dry\",85.5\n");
    ASSERT_TRUE(m_faults.isEmpty());
    ASSERT_EQ(m_input.readings.size(), 1U);
    const ReadingRow& row = m_input.readings.front();
    EXPECT_EQ(m_input.texts.utf8(row.engine), "Blue");
    EXPECT_EQ(row.inspectedOn(), QDate(2026, 5, 2));
    EXPECT_EQ(row.engineRaces, 9);
    EXPECT_EQ(row.place(), (Place{Cylinder(3), Valve::Exhaust}));
    EXPECT_EQ(m_input.texts.utf8(row.spring), "S-27");
    EXPECT_EQ(row.value(), TypedForce(11750, 2, ForceUnit::PoundForce));
    EXPECT_EQ(row.hit, 2);
    EXPECT_TRUE(row.retest);
    EXPECT_EQ(m_input.texts.utf8(row.tester), "Bench 160");
    EXPECT_EQ(m_input.texts.utf8(row.inspector), "Kim");
    EXPECT_EQ(m_input.texts.utf8(row.note), "rough, dry");
    EXPECT_EQ(row.milliCelsius, 85500);
    EXPECT_EQ(row.line, 2U);
}

TEST_F(ExchangeParserTest, TakesColumnsInAnyOrderAndLeavesOutWhatIsNotNeeded) {
    read("reading_n,valve,spring,cylinder,engine_races,inspected_on,engine\n"
         "520,i,A,8,0,1950-01-01,Red\n");
    ASSERT_TRUE(m_faults.isEmpty());
    const ReadingRow& row = m_input.readings.at(0);
    EXPECT_EQ(row.value(), TypedForce(520, 0, ForceUnit::Newton));
    EXPECT_EQ(row.place(), (Place{Cylinder(8), Valve::Intake}));
    EXPECT_EQ(row.hit, 0);
    EXPECT_EQ(row.milliCelsius, ReadingRow::kNoTemperature);
}

TEST_F(ExchangeParserTest, ReadsAFullRowOfRaces) {
    read(kRaceHeader + "Blue,4,2026-04-25,Hill Oval,120,9150,0,wet\nBlue,5,2026-05-02,,,,,\n");
    ASSERT_TRUE(m_faults.isEmpty());
    ASSERT_EQ(m_input.races.size(), 2U);
    const RaceRow& full = m_input.races[0];
    EXPECT_EQ(full.number, 4);
    EXPECT_EQ(full.racedOn(), QDate(2026, 4, 25));
    EXPECT_EQ(m_input.texts.utf8(full.venue), "Hill Oval");
    EXPECT_EQ(full.laps, 120);
    EXPECT_EQ(full.peakRpm, 9150);
    EXPECT_EQ(full.overRev, 0);
    EXPECT_EQ(m_input.texts.utf8(full.note), "wet");
    const RaceRow& bare = m_input.races[1];
    EXPECT_EQ(bare.laps, RaceRow::kNotGiven);
    EXPECT_EQ(bare.overRev, RaceRow::kNotGiven);
}

TEST_F(ExchangeParserTest, TrimsTextsAndBringsThemToOneForm) {
    // Unicode Standard Annex 15: U+006F U+0308 composes to U+00F6.
    read(kHeader + "\" Bo\xCC\x88se \",2026-05-02,0,1,I,A,1,,,,,,,\n"
                   "B\xC3\xB6se,2026-05-02,0,1,E,B,1,,,,,,,\n");
    ASSERT_TRUE(m_faults.isEmpty());
    EXPECT_EQ(m_input.readings[0].engine, m_input.readings[1].engine);
    EXPECT_EQ(m_input.texts.utf8(m_input.readings[0].engine), "B\xC3\xB6se");
}

TEST_F(ExchangeParserTest, TakesOneGuardAwayAndNoMore) {
    const auto textOf = [this](const std::string& cell) {
        return m_input.texts.utf8(m_input.texts.fromCell(cell));
    };
    EXPECT_EQ(textOf("'=1+1"), "=1+1");
    EXPECT_EQ(textOf("'+A"), "+A");
    EXPECT_EQ(textOf("'-A"), "-A");
    EXPECT_EQ(textOf("'@A"), "@A");
    EXPECT_EQ(textOf("''quoted'"), "'quoted'");
    EXPECT_EQ(textOf("'''"), "''");
    EXPECT_EQ(textOf("'plain"), "'plain");
    EXPECT_EQ(textOf("'"), "'");
    EXPECT_EQ(textOf("=1+1"), "=1+1");
}

TEST_F(ExchangeParserTest, DoesNotTakeAGuardedTextForTheOneOfTheRowBefore) {
    read(kHeader + "''=A,2026-05-02,0,1,I,A,1,,,,,,,\n'=A,2026-05-02,0,1,E,B,1,,,,,,,\n"
                   "=A,2026-05-02,0,2,E,C,1,,,,,,,\n");
    ASSERT_TRUE(m_faults.isEmpty());
    EXPECT_EQ(m_input.texts.utf8(m_input.readings[0].engine), "'=A");
    EXPECT_EQ(m_input.texts.utf8(m_input.readings[1].engine), "=A");
    EXPECT_EQ(m_input.texts.utf8(m_input.readings[2].engine), "=A");
}

TEST_F(ExchangeParserTest, TakesAHeaderAloneAsEmptyTable) {
    read(kHeader);
    EXPECT_TRUE(m_faults.isEmpty());
    EXPECT_TRUE(m_input.readings.empty());
}

TEST_F(ExchangeParserTest, ReportsTheFirstFaultByFileLineAndColumnAndCountsTheOthers) {
    const QStringList files{write(QStringLiteral("a.csv"), kHeader +
                                                               "B,2026-05-02,0,1,I,A,1,,,,,,,\n"
                                                               "B,2026-05-02,0,99,X,A,1,,,,,,,\n"),
                            write(QStringLiteral("b.csv"), "")};
    EXPECT_TRUE(readExchangeFiles(files, m_clock, {}, m_input, m_faults));
    const Error error = m_faults.first();
    EXPECT_EQ(error.file, files.front());
    EXPECT_EQ(error.line, 3);
    EXPECT_EQ(error.column, QStringLiteral("cylinder"));
    EXPECT_EQ(error.more, 2);
}

TEST_F(ExchangeParserTest, ReadsAFileOfNothingButFaultsToItsEnd) {
    constexpr qint64 kRows = 300'000;
    std::string bytes = kHeader;
    for (qint64 row = 0; row < kRows; ++row) {
        bytes += "x\n";
    }
    read(bytes);
    const Error error = m_faults.first();
    EXPECT_EQ(error.fault, Fault(InputFault::TooFewFields));
    EXPECT_EQ(error.arguments, (QStringList{QStringLiteral("1"), QStringLiteral("14")}));
    EXPECT_EQ(error.line, 2);
    EXPECT_EQ(error.more, kRows - 1);
}

TEST_F(ExchangeParserTest, StopsWhenAsked) {
    const QString path = write(QStringLiteral("a.csv"), kHeader);
    EXPECT_FALSE(readExchangeFiles(
        {path}, m_clock, [](double) { return false; }, m_input, m_faults));
}

struct BadTable {
    const char* name;
    std::string bytes;
    Fault fault;
    qint64 line;
    const char* column;
};

class BadTableTest : public ExchangeParserTest, public ::testing::WithParamInterface<BadTable> {};

TEST_P(BadTableTest, IsRefusedWithFaultAndPlace) {
    const BadTable& table = GetParam();
    read(table.bytes);
    ASSERT_FALSE(m_faults.isEmpty());
    const Error error = m_faults.first();
    EXPECT_EQ(error.fault, table.fault) << ::testing::PrintToString(error);
    EXPECT_EQ(error.line, table.line);
    EXPECT_EQ(error.column, QLatin1String(table.column));
    EXPECT_TRUE(error.file.endsWith(QStringLiteral("table.csv")));
    EXPECT_EQ(error.more, 0);
}

std::string nameOf(const ::testing::TestParamInfo<BadTable>& table) {
    return table.param.name;
}

INSTANTIATE_TEST_SUITE_P(
    Header, BadTableTest,
    ::testing::Values(
        BadTable{"Nothing", "", InputFault::EmptyFile, 0, ""},
        BadTable{"OnlyAByteOrderMark", "\xEF\xBB\xBF", InputFault::EmptyFile, 0, ""},
        BadTable{"OnlyBlankLines", "\n\r\n", InputFault::EmptyFile, 0, ""},
        BadTable{"SomeOtherTable", "name,phone\n", InputFault::UnknownHeader, 1, ""},
        BadTable{"ColumnOfNoKind",
                 "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,reading_kg\n",
                 InputFault::UnknownColumn, 1, "reading_kg"},
        BadTable{"ColumnInCapitals",
                 "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,Hit\n",
                 InputFault::UnknownColumn, 1, "Hit"},
        BadTable{"ColumnOfTheOtherKind", "engine,race,raced_on,hit\n", InputFault::UnknownColumn, 1,
                 "hit"},
        BadTable{"ColumnMissing", "engine,inspected_on,engine_races,cylinder,valve,reading_lbf\n",
                 InputFault::MissingColumn, 1, "spring"},
        BadTable{"BothReadingColumnsMissing",
                 "engine,inspected_on,engine_races,cylinder,valve,spring\n",
                 InputFault::MissingColumn, 1, "reading_lbf"},
        BadTable{"ColumnTwice", "engine,race,raced_on,race\n", InputFault::DuplicateColumn, 1,
                 "race"},
        BadTable{"BlankLineBeforeIt", "\n" + kRaceHeader, InputFault::BlankLine, 1, ""}),
    nameOf);

/// One good row of readings with one cell replaced.
std::string with(std::size_t field, const std::string& cell) {
    std::vector<std::string> cells{"Blue", "2026-05-02", "9", "3", "E", "S-27", "117.5",
                                   "",     "1",          "",  "",  "",  "",     "85"};
    cells[field] = cell;
    std::string row;
    for (const std::string& text : cells) {
        row += (row.empty() ? "" : ",") + text;
    }
    return kHeader + row + "\n";
}

INSTANTIATE_TEST_SUITE_P(
    Cell, BadTableTest,
    ::testing::Values(
        BadTable{"NoEngine", with(0, " "), InputFault::EmptyCell, 2, "engine"},
        BadTable{"NoSpring", with(5, "\"\t\""), InputFault::EmptyCell, 2, "spring"},
        BadTable{"NoDate", with(1, ""), InputFault::EmptyCell, 2, "inspected_on"},
        BadTable{"DateInWords", with(1, "May 2"), InputFault::NotADate, 2, "inspected_on"},
        BadTable{"DateTheOtherWayRound", with(1, "02-05-2026"), InputFault::NotADate, 2,
                 "inspected_on"},
        BadTable{"DayThatIsNot", with(1, "2026-02-29"), InputFault::NotADate, 2, "inspected_on"},
        BadTable{"DateWithTime", with(1, "2026-05-02T10:00"), InputFault::NotADate, 2,
                 "inspected_on"},
        BadTable{"DateTooEarly", with(1, "1949-12-31"), LogbookFault::DateTooEarly, 2,
                 "inspected_on"},
        BadTable{"DayAfterTomorrow", with(1, "2026-06-17"), LogbookFault::DateInFuture, 2,
                 "inspected_on"},
        BadTable{"RacesNegative", with(2, "-1"), InputFault::NotACount, 2, "engine_races"},
        BadTable{"RacesWithDecimals", with(2, "9.0"), InputFault::NotACount, 2, "engine_races"},
        BadTable{"RacesBeyondReason", with(2, "1000000"), InputFault::NotACount, 2, "engine_races"},
        BadTable{"RacesPastAnyNumber", with(2, "99999999999999999999"), InputFault::NotACount, 2,
                 "engine_races"},
        BadTable{"CylinderZero", with(3, "0"), InputFault::NotACount, 2, "cylinder"},
        BadTable{"CylinderNoEngineHas", with(3, "25"), InputFault::NotACount, 2, "cylinder"},
        BadTable{"CylinderInLetters", with(3, "three"), InputFault::NotACount, 2, "cylinder"},
        BadTable{"ValveUnknown", with(4, "X"), InputFault::NotAValve, 2, "valve"},
        BadTable{"ValveEmpty", with(4, ""), InputFault::NotAValve, 2, "valve"},
        BadTable{"ReadingInWords", with(6, "soft"), LogbookFault::NotAReading, 2, "reading_lbf"},
        BadTable{"ReadingNegative", with(6, "-117"), LogbookFault::NotAReading, 2, "reading_lbf"},
        BadTable{"ReadingWithSign", with(6, "+117"), LogbookFault::NotAReading, 2, "reading_lbf"},
        BadTable{"ReadingWithExponent", with(6, "1e2"), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingWithSpace", with(6, " 117"), LogbookFault::NotAReading, 2, "reading_lbf"},
        BadTable{"ReadingWithComma", with(6, "\"117,5\""), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingWithoutWholeDigits", with(6, ".5"), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingEndingInAPoint", with(6, "117."), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingOfFiveDigits", with(6, "10000"), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingOfSevenDecimals", with(6, "1.1234567"), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingInArabicDigits", with(6, "\xD9\xA1"), LogbookFault::NotAReading, 2,
                 "reading_lbf"},
        BadTable{"ReadingZero", with(6, "0.00"), LogbookFault::ReadingOutOfBounds, 2,
                 "reading_lbf"},
        BadTable{"ReadingAboveAll", with(6, "1000.1"), LogbookFault::ReadingOutOfBounds, 2,
                 "reading_lbf"},
        BadTable{"ReadingNot", with(6, ""), InputFault::NoReading, 2, "reading_lbf"},
        BadTable{"ReadingInBothUnits", with(7, "520"), InputFault::TwoReadings, 2, "reading_n"},
        BadTable{"HitZero", with(8, "0"), InputFault::NotACount, 2, "hit"},
        BadTable{"HitInLetters", with(8, "first"), InputFault::NotACount, 2, "hit"},
        BadTable{"RetestInWords", with(9, "yes"), InputFault::NotAFlag, 2, "retest"},
        BadTable{"TemperatureTooLow", with(13, "-40.000001"), InputFault::NotATemperature, 2,
                 "engine_temp_c"},
        BadTable{"TemperatureTooHigh", with(13, "250.1"), InputFault::NotATemperature, 2,
                 "engine_temp_c"},
        BadTable{"TemperatureWithUnit", with(13, "85 C"), InputFault::NotATemperature, 2,
                 "engine_temp_c"},
        BadTable{"NewtonsAboveAll", kHeader + "B,2026-05-02,0,1,I,A,,4448.23,,,,,,\n",
                 LogbookFault::ReadingOutOfBounds, 2, "reading_n"},
        BadTable{"RaceZero", kRaceHeader + "B,0,2026-05-02,,,,,\n", InputFault::NotACount, 2,
                 "race"},
        BadTable{"RaceTomorrowButOne", kRaceHeader + "B,1,2026-06-17,,,,,\n",
                 LogbookFault::DateInFuture, 2, "raced_on"},
        BadTable{"LapsNegative", kRaceHeader + "B,1,2026-05-02,,-1,,,\n", InputFault::NotACount, 2,
                 "laps"},
        BadTable{"RpmInWords", kRaceHeader + "B,1,2026-05-02,,,high,,\n", InputFault::NotACount, 2,
                 "peak_rpm"},
        BadTable{"OverRevInWords", kRaceHeader + "B,1,2026-05-02,,,,yes,\n", InputFault::NotAFlag,
                 2, "over_rev"}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Row, BadTableTest,
    ::testing::Values(
        BadTable{"CellsMissing", kRaceHeader + "B,1\n", InputFault::TooFewFields, 2, "raced_on"},
        BadTable{"CellsTooMany", kRaceHeader + "B,1,2026-05-02,a,1,1,0,n,more\n",
                 InputFault::TooManyFields, 2, ""},
        BadTable{"BlankLineInside", kRaceHeader + "B,1,2026-05-02,,,,,\n\nB,2,2026-05-03,,,,,\n",
                 InputFault::BlankLine, 3, ""},
        BadTable{"QuoteNeverClosed", with(12, "\"open"), InputFault::QuoteNotClosed, 2, "note"},
        BadTable{"QuoteInside", with(12, "ro\"ugh"), InputFault::StrayQuote, 2, "note"},
        BadTable{"NulByte", with(5, "S\0"s), InputFault::NulByte, 2, "spring"},
        BadTable{"NotUtf8", with(11, "J\xFCrgen"), InputFault::InvalidUtf8, 2, "inspector"},
        BadTable{"LineOfALaterRecordCountsLinesInQuotes",
                 kRaceHeader + "B,1,2026-05-02,\"two\nlines\",,,,\nB,x,2026-05-03,,,,,\n",
                 InputFault::NotACount, 4, "race"}),
    nameOf);

TEST_F(ExchangeParserTest, KeepsTheBoundsThatAreStillAllowed) {
    read(kHeader + "B,1950-01-01,0,24,INTAKE,A,1000,,999999,0,,,,-40\n"
                   "B,2026-06-16,999999,1,Exhaust,B,,4448.22,,1,,,,250\n"
                   "B, 2026-06-15 , 1 , 2 ,e,C,0.000001,,,,,,, 20.0005 \n");
    EXPECT_TRUE(m_faults.isEmpty());
    ASSERT_EQ(m_input.readings.size(), 3U);
    EXPECT_EQ(m_input.readings[0].milliCelsius, -40000);
    EXPECT_EQ(m_input.readings[2].milliCelsius, 20001);
}

} // namespace
} // namespace coilbook
