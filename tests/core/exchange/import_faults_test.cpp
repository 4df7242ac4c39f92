#include "tests/core/exchange/import_fixture.h"

namespace coilbook {
namespace {

using testing::races;
using testing::readings;
using Fault = decltype(Error::fault);

/// What is stored before, what is imported then, and what is said of it.
struct BadImport {
    const char* name;
    std::vector<std::string> stored;
    std::vector<std::string> files;
    Fault fault;
    int file;
    qint64 line;
    const char* column;
    QStringList arguments;
};

QStringList texts(std::initializer_list<const char*> list) {
    QStringList result;
    for (const char* text : list) {
        result.append(QString::fromUtf8(text));
    }
    return result;
}

class BadImportTest : public testing::ImportFixture,
                      public ::testing::WithParamInterface<BadImport> {};

TEST_P(BadImportTest, IsRefusedWholeWithFaultAndPlace) {
    const BadImport& bad = GetParam();
    LogbookStore store = newLogbook();
    if (!bad.stored.empty()) {
        imported(store, bad.stored);
    }
    const auto before = exported(store);
    const Result<ImportReport> report = import(store, bad.files);
    ASSERT_FALSE(report.has_value());
    const Error& error = report.error();
    EXPECT_EQ(error.fault, bad.fault) << ::testing::PrintToString(error);
    EXPECT_EQ(error.file, pathOf(QStringLiteral("in%1.csv").arg(bad.file)));
    EXPECT_EQ(error.line, bad.line);
    EXPECT_EQ(error.column, QLatin1String(bad.column));
    EXPECT_EQ(error.arguments, bad.arguments) << error.arguments.join(u'|').toStdString();
    EXPECT_EQ(error.more, 0);
    EXPECT_EQ(exported(store), before);
}

const std::string kStored = readings({
    "Blue,2026-04-04,0,1,I,A,120,1",
    "Blue,2026-04-18,2,1,I,A,119,1",
});

INSTANTIATE_TEST_SUITE_P(
    WithinTheFiles, BadImportTest,
    ::testing::Values(
        BadImport{"HitTwice",
                  {},
                  {readings({"B,2026-04-04,0,1,I,A,120,1", "B,2026-04-04,0,1,I,A,121,1"})},
                  InputFault::HitTwice,
                  0,
                  3,
                  "hit",
                  texts({"A", "1", "", "2"})},
        BadImport{"EqualHitTwice",
                  {},
                  {readings({"B,2026-04-04,0,1,I,A,120,1", "B,2026-04-04,0,1,I,A,120,1"})},
                  InputFault::HitTwice,
                  0,
                  3,
                  "hit",
                  texts({"A", "1", "", "2"})},
        BadImport{"HitsPartlyNumbered",
                  {},
                  {readings({"B,2026-04-04,0,1,I,A,120,", "B,2026-04-04,0,1,I,A,121,2"})},
                  InputFault::HitsPartlyNumbered,
                  0,
                  3,
                  "hit",
                  texts({"A", "", "2"})},
        BadImport{"SpringAtTwoPlaces",
                  {},
                  {readings({"B,2026-04-04,0,1,I,A,120,1", "B,2026-04-04,0,1,E,A,121,2"})},
                  InputFault::SpringAtTwoPlaces,
                  0,
                  3,
                  "valve",
                  texts({"A", "1 E", "1 I", "", "2"})},
        BadImport{"EngineNameInOtherCase",
                  {},
                  {readings({"Blue,2026-04-04,0,1,I,A,120,1", "BLUE,2026-04-04,0,1,I,A,120,1"})},
                  LogbookFault::NameDiffersInCaseOnly,
                  0,
                  3,
                  "engine",
                  texts({"BLUE", "Blue"})},
        BadImport{"EngineNameInOtherCaseInAnotherKindOfFile",
                  {},
                  {readings({"Blue,2026-04-04,0,1,I,A,120,1"}), races({"blue,1,2026-04-11,,,,,"})},
                  LogbookFault::NameDiffersInCaseOnly,
                  1,
                  2,
                  "engine",
                  texts({"blue", "Blue"})},
        BadImport{"SpringNameInOtherCase",
                  {},
                  {readings({"B,2026-04-04,0,1,I,s-1,120,1", "B,2026-04-18,2,1,I,S-1,120,1"})},
                  LogbookFault::NameDiffersInCaseOnly,
                  0,
                  3,
                  "spring",
                  texts({"S-1", "s-1"})},
        BadImport{"NoSuchCylinder",
                  {},
                  {readings({"B,2026-04-04,0,9,I,A,120,1"})},
                  LogbookFault::NoSuchPlace,
                  0,
                  2,
                  "cylinder",
                  texts({"9 I"})},
        BadImport{"RacesGoBack",
                  {},
                  {readings({"B,2026-04-04,3,1,I,A,120,1", "B,2026-04-18,2,1,I,A,119,1"})},
                  LogbookFault::RacesGoBack,
                  0,
                  3,
                  "engine_races",
                  texts({"2", "2026-04-04", "3"})},
        BadImport{"RaceTwice",
                  {},
                  {races({"B,1,2026-04-11,,,,,", "B,1,2026-04-11,,,,,"})},
                  InputFault::RaceTwice,
                  0,
                  3,
                  "race",
                  texts({"1", "", "2"})},
        BadImport{"RaceAfterTheInspectionThatCountsIt",
                  {},
                  {races({"B,2,2026-04-19,,,,,"}), readings({"B,2026-04-18,2,1,I,A,119,1"})},
                  LogbookFault::RaceAfterInspection,
                  0,
                  2,
                  "raced_on",
                  texts({"2", "2026-04-19", "2026-04-18"})},
        BadImport{"OneBadFileAmongGoodOnes",
                  {},
                  {kStored, races({"Blue,1,2026-04-11,,,,2,"})},
                  InputFault::NotAFlag,
                  1,
                  2,
                  "over_rev",
                  texts({"2"})}),
    [](const auto& bad) { return std::string(bad.param.name); });

INSTANTIATE_TEST_SUITE_P(
    BesideTheLogbook, BadImportTest,
    ::testing::Values(
        BadImport{"OtherReading",
                  {kStored},
                  {readings({"Blue,2026-04-18,2,1,I,A,118,1"})},
                  InputFault::ContradictsStored,
                  0,
                  2,
                  "reading_lbf",
                  texts({"118 lbf", "119 lbf"})},
        BadImport{"OtherPlace",
                  {kStored},
                  {readings({"Blue,2026-04-18,2,3,I,A,119,1"})},
                  InputFault::SpringAtTwoPlaces,
                  0,
                  2,
                  "cylinder",
                  texts({"A", "3 I", "1 I", "", "0"})},
        BadImport{"OtherTester",
                  {"engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,tester\n"
                   "B,2026-04-04,0,1,I,A,120,Bench\n"},
                  {"engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,tester\n"
                   "B,2026-04-04,0,1,I,A,120,Truck\n"},
                  InputFault::ContradictsStored,
                  0,
                  2,
                  "tester",
                  texts({"Truck", "Bench"})},
        BadImport{"EngineNameInOtherCase",
                  {kStored},
                  {readings({"blue,2026-04-18,2,1,I,A,119,1"})},
                  LogbookFault::NameDiffersInCaseOnly,
                  0,
                  2,
                  "engine",
                  texts({"blue", "Blue"})},
        BadImport{"SpringNameInOtherCase",
                  {kStored},
                  {readings({"Blue,2026-05-02,4,1,I,a,119,1"})},
                  LogbookFault::NameDiffersInCaseOnly,
                  0,
                  2,
                  "spring",
                  texts({"a", "A"})},
        BadImport{"RacesGoBackAfterIt",
                  {kStored},
                  {readings({"Blue,2026-05-02,1,1,I,A,118,1"})},
                  LogbookFault::RacesGoBack,
                  0,
                  2,
                  "engine_races",
                  texts({"1", "2026-04-18", "2"})},
        BadImport{"RacesGoBackBeforeIt",
                  {kStored},
                  {readings({"Blue,2026-04-11,3,1,I,A,118,1"})},
                  LogbookFault::RacesGoBack,
                  0,
                  2,
                  "engine_races",
                  texts({"3", "2026-04-18", "2"})},
        BadImport{"OtherRace",
                  {races({"B,1,2026-04-11,Hill Oval,100,9000,0,wet"})},
                  {races({"B,1,2026-04-11,Hill Oval,101,9000,0,wet"})},
                  InputFault::ContradictsStored,
                  0,
                  2,
                  "laps",
                  texts({"101", "100"})},
        BadImport{"InspectionBeforeARaceItCounts",
                  {races({"Blue,2,2026-04-11,,,,,"})},
                  {readings({"Blue,2026-04-10,2,1,I,A,118,1"})},
                  LogbookFault::RaceAfterInspection,
                  0,
                  2,
                  "inspected_on",
                  texts({"2", "2026-04-11", "2026-04-10"})}),
    [](const auto& bad) { return std::string(bad.param.name); });

class SeveralFaultsTest : public testing::ImportFixture {};

TEST_F(SeveralFaultsTest, AreToldByTheFirstPlaceWhicheverKindTheyAre) {
    LogbookStore store = newLogbook();
    const Result<ImportReport> report =
        import(store, {readings({"B,2026-04-04,0,1,I,A,120,1", "B,2026-04-04,0,1,I,A,121,1",
                                 "B,2026-04-04,0,x,I,A,121,3"}),
                       races({"B,one,2026-04-11,,,,,"})});
    ASSERT_FALSE(report.has_value());
    EXPECT_EQ(report.error().fault, Fault(InputFault::HitTwice));
    EXPECT_EQ(report.error().line, 3);
    EXPECT_EQ(report.error().more, 2);
}

} // namespace
} // namespace coilbook
