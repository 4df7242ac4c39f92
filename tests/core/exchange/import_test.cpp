#include "tests/core/exchange/import_fixture.h"

namespace coilbook {
namespace {

using testing::races;
using testing::readings;
using testing::unnumbered;

class ImportTest : public testing::ImportFixture {};

const std::string kTwoInspections = readings({
    "Blue,2026-04-04,0,1,I,A,120,1",
    "Blue,2026-04-04,0,1,I,A,121,2",
    "Blue,2026-04-18,2,1,I,A,119,1",
});

TEST_F(ImportTest, MakesEngineSpringsAndInspectionsOfWhatIsNotThere) {
    LogbookStore store = newLogbook();
    const ImportReport report = imported(store, {kTwoInspections});
    EXPECT_EQ(report.readingsRead, 3);
    EXPECT_EQ(report.readingsAdded, 3);
    EXPECT_EQ(report.readingsKnown, 0);
    EXPECT_EQ(report.enginesMade, QStringList(QStringLiteral("Blue")));

    const EngineLog log = logOf(store, QStringLiteral("Blue"));
    EXPECT_EQ(log.engine.layout, defaultLayout());
    EXPECT_EQ(log.engine.rules, JudgingRules());
    ASSERT_EQ(log.springs.size(), 1U);
    EXPECT_EQ(log.springs.front().label, QStringLiteral("A"));
    ASSERT_EQ(log.inspections.size(), 2U);
    EXPECT_TRUE(log.inspections.front().closed);
    EXPECT_EQ(log.inspections.back().engineRaces, 2);
    EXPECT_EQ(log.sittings.size(), 2U);
    EXPECT_EQ(log.readings.size(), 3U);
    EXPECT_TRUE(log.fittings.empty());
}

TEST_F(ImportTest, GroupsRowsOfOneInspectionByTesterPersonAndTemperature) {
    LogbookStore store = newLogbook();
    imported(store, {"engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,tester,"
                     "inspector,engine_temp_c\n"
                     "Blue,2026-04-04,0,1,I,A,120,Bench,Kim,85\n"
                     "Blue,2026-04-04,0,2,I,B,120,Bench,Kim,85\n"
                     "Blue,2026-04-04,0,3,I,C,120,Bench,Kim,60\n"
                     "Blue,2026-04-04,0,4,I,D,120,Truck,Kim,85\n"
                     "Blue,2026-04-04,0,5,I,E,120,,,\n"});
    const EngineLog log = logOf(store, QStringLiteral("Blue"));
    EXPECT_EQ(log.inspections.size(), 1U);
    EXPECT_EQ(log.sittings.size(), 4U);
    EXPECT_EQ(store.testers().value().size(), 2U);
}

TEST_F(ImportTest, ChangesNothingTheSecondTimeAndSaysSo) {
    LogbookStore store = newLogbook();
    const std::string raceFile = races({"Blue,1,2026-04-11,Hill Oval,100,9000,0,wet"});
    imported(store, {kTwoInspections, raceFile});
    const EngineLog before = logOf(store, QStringLiteral("Blue"));
    const ImportReport again = imported(store, {raceFile, kTwoInspections});
    EXPECT_TRUE(again.changedNothing());
    EXPECT_EQ(again.readingsKnown, 3);
    EXPECT_EQ(again.racesKnown, 1);
    EXPECT_TRUE(again.enginesMade.isEmpty());
    EXPECT_EQ(logOf(store, QStringLiteral("Blue")), before);
}

TEST_F(ImportTest, AddsOnlyWhatIsNew) {
    LogbookStore store = newLogbook();
    imported(store, {kTwoInspections});
    const ImportReport report =
        imported(store, {kTwoInspections + "Blue,2026-04-18,2,1,I,A,118.5,2\n"});
    EXPECT_EQ(report.readingsKnown, 3);
    EXPECT_EQ(report.readingsAdded, 1);
    const EngineLog log = logOf(store, QStringLiteral("Blue"));
    EXPECT_EQ(log.readings.size(), 4U);
    EXPECT_EQ(log.inspections.size(), 2U);
    EXPECT_EQ(log.sittings.size(), 2U);
    EXPECT_EQ(log.springs.size(), 1U);
}

TEST_F(ImportTest, NumbersHitsWithoutNumbersInTheirOrderEqualOnesIncluded) {
    LogbookStore store = newLogbook();
    imported(store, {unnumbered({"Blue,2026-04-04,0,1,I,A,120", "Blue,2026-04-04,0,1,I,A,120",
                                 "Blue,2026-04-04,0,1,I,A,119"})});
    EXPECT_EQ(exported(store).second,
              "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,reading_n,hit,"
              "retest,tester,inspector,note,engine_temp_c\r\n"
              "Blue,2026-04-04,0,1,I,A,120,,1,,,,,\r\n"
              "Blue,2026-04-04,0,1,I,A,120,,2,,,,,\r\n"
              "Blue,2026-04-04,0,1,I,A,119,,3,,,,,\r\n");
}

TEST_F(ImportTest, LetsRowsWithoutNumbersGoOnBehindTheStoredOnes) {
    LogbookStore store = newLogbook();
    imported(store, {unnumbered({"Blue,2026-04-04,0,1,I,A,120", "Blue,2026-04-04,0,1,I,A,121"})});
    const ImportReport more =
        imported(store, {unnumbered({"Blue,2026-04-04,0,1,I,A,120", "Blue,2026-04-04,0,1,I,A,121",
                                     "Blue,2026-04-04,0,1,I,A,122"})});
    EXPECT_EQ(more.readingsKnown, 2);
    EXPECT_EQ(more.readingsAdded, 1);
    EXPECT_EQ(logOf(store, QStringLiteral("Blue")).readings.back().hit, 3);

    const Result<ImportReport> otherOrder =
        import(store, {unnumbered({"Blue,2026-04-04,0,1,I,A,121", "Blue,2026-04-04,0,1,I,A,120"})});
    ASSERT_FALSE(otherOrder.has_value());
    EXPECT_EQ(otherOrder.error().fault, decltype(Error::fault)(InputFault::ContradictsStored));
    EXPECT_EQ(otherOrder.error().line, 2);
}

TEST_F(ImportTest, TakesAReadingForKnownWhicheverZerosItIsWrittenWith) {
    LogbookStore store = newLogbook();
    imported(store, {readings({"Blue,2026-04-04,0,1,I,A,120.50,1"})});
    EXPECT_EQ(imported(store, {readings({"Blue,2026-04-04,0,1,I,A,120.5,1"})}).readingsKnown, 1);
}

TEST_F(ImportTest, SaysWhichBaselinesAnEarlierHistoryMovesBack) {
    LogbookStore store = newLogbook();
    imported(store, {readings({"Blue,2026-04-18,2,1,I,A,119,1", "Blue,2026-04-18,2,2,I,B,119,1"})});
    const ImportReport report = imported(store, {readings({"Blue,2026-04-04,0,1,I,A,120,1"})});
    ASSERT_EQ(report.movedBaselines.size(), 1U);
    EXPECT_EQ(report.movedBaselines.front(),
              (ImportReport::MovedBaseline{QStringLiteral("Blue"), QStringLiteral("A"),
                                           QDate(2026, 4, 18), QDate(2026, 4, 4)}));
}

TEST_F(ImportTest, AllowsASwapAtAnInspectionAndASpringThatMoves) {
    LogbookStore store = newLogbook();
    imported(store, {readings({"Blue,2026-04-04,0,1,I,A,120,1", "Blue,2026-04-18,2,1,I,A,114,1",
                               "Blue,2026-04-18,2,1,I,B,121,1", "Blue,2026-05-02,4,1,I,B,120,1",
                               "Blue,2026-05-02,4,7,E,A,113,1"})});
    EXPECT_EQ(logOf(store, QStringLiteral("Blue")).springs.size(), 2U);
}

TEST_F(ImportTest, TakesCylindersBeyondEightOnlyWhereTheEngineHasThem) {
    LogbookStore store = newLogbook();
    Engine engine;
    engine.id = EngineId::make();
    engine.name = QStringLiteral("Twelve");
    engine.layout.banks.clear();
    engine.layout.firingOrder.clear();
    Bank bank{QStringLiteral("Only"), {}};
    for (int number = 1; number <= 12; ++number) {
        bank.places.push_back({Cylinder(number), Valve::Intake});
        bank.places.push_back({Cylinder(number), Valve::Exhaust});
        engine.layout.firingOrder.emplace_back(number);
    }
    engine.layout.banks.push_back(bank);
    ASSERT_TRUE(store.apply(AddEngine{engine, {}, {}}, m_clock).has_value());
    imported(store, {readings({"Twelve,2026-04-04,0,12,E,A,120,1"})});
    EXPECT_FALSE(import(store, {readings({"Blue,2026-04-04,0,12,E,A,120,1"})}).has_value());
}

TEST_F(ImportTest, LeavesTheLogbookAsItWasWhenStoppedAtAnyMoment) {
    LogbookStore store = newLogbook();
    std::string rows;
    for (int i = 0; i < 20'000; ++i) {
        rows += "Blue,2026-04-04,0," + std::to_string(i % 8 + 1) + ",I,S" +
                std::to_string(i % 8 + 1) + ",120," + std::to_string(i / 8 + 1) + "\n";
    }
    const QString path = write(QStringLiteral("long.csv"), readings({}) + rows);
    int calls = 0;
    double last = 0.0;
    ASSERT_TRUE(
        importFiles(store, {path}, m_clock, [&](double) { return ++calls < 3; }).error().fault ==
        decltype(Error::fault)(InputFault::Cancelled));
    // Once more, stopped as late as the writing of rows.
    const Result<ImportReport> late = importFiles(store, {path}, m_clock, [&](double part) {
        EXPECT_GE(part, last);
        last = part;
        return part < 0.8;
    });
    ASSERT_FALSE(late.has_value());
    EXPECT_EQ(late.error().fault, decltype(Error::fault)(InputFault::Cancelled));
    EXPECT_TRUE(store.engines().value().empty());
    EXPECT_TRUE(store.testers().value().empty());
    EXPECT_EQ(importFiles(store, {path}, m_clock).value().readingsAdded, 20'000);
}

TEST_F(ImportTest, AnInspectionMustFitTheRunningThatIsStored) {
    LogbookStore store = newLogbook();
    imported(store, {readings({"Blue,2026-04-04,0,1,I,A,120,1", "Blue,2026-05-02,4,1,I,A,119,1"})});
    Running running;
    running.id = RunningId::make();
    running.engine = store.engines()->front().id;
    running.ranOn = QDate(2026, 4, 18);
    running.engineRaces = 2;
    running.raceThousandths = 500;
    ASSERT_TRUE(store.apply(AddRunning{running}, m_clock).has_value());
    const auto refused = import(store, {readings({"Blue,2026-04-25,1,1,I,A,119,1"})});
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().fault, decltype(Error::fault)(LogbookFault::RacesGoBack));
    EXPECT_EQ(
        refused.error().arguments,
        (QStringList{QStringLiteral("1"), QStringLiteral("2026-04-18"), QStringLiteral("2")}));
    EXPECT_TRUE(import(store, {readings({"Blue,2026-04-25,2,1,I,A,119,1"})}).has_value());
}

} // namespace
} // namespace coilbook
