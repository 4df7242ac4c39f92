#include "tests/core/storage/logbook_fixture.h"

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

/// The rules by themselves are tested in log_rules_test.cpp; here that the store asks them, and
/// what only the store can know.
class StoreRulesTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
    }

    [[nodiscard]] static Engine other(const QString& name) {
        Engine engine;
        engine.id = EngineId::make();
        engine.name = name;
        return engine;
    }

    [[nodiscard]] AddRace race(int number, const QDate& day) const {
        Race made;
        made.id = RaceId::make();
        made.engine = m_engine.id;
        made.number = number;
        made.racedOn = day;
        return {made};
    }

    [[nodiscard]] StartInspection inspection(const QDate& day, int races) const {
        const Inspection made{InspectionId::make(), m_engine.id, day, races, true};
        return {made, {SittingId::make(), made.id, {}, {}, {}}};
    }
};

TEST_F(StoreRulesTest, EngineNamesAreUniqueAlsoButForCase) {
    EXPECT_TRUE(failedWith(LogbookFault::EngineNameTaken,
                           apply(AddEngine{other(QStringLiteral("Blue")), {}, {}})));
    EXPECT_TRUE(failedWith(LogbookFault::NameDiffersInCaseOnly,
                           apply(AddEngine{other(QStringLiteral("BLUE")), {}, {}})));
    EXPECT_TRUE(
        failedWith(LogbookFault::EmptyName, apply(AddEngine{other(QStringLiteral("  ")), {}, {}})));
    Engine own = m_engine;
    own.name = QStringLiteral("BLUE");
    EXPECT_TRUE(succeeded(apply(AmendEngine{own, author()})));
}

TEST_F(StoreRulesTest, TesterNamesAreUniqueAlsoButForCase) {
    const auto tester = [](const QString& name) {
        return AddTester{{TesterId::make(), name, {}, {}, {}, {}}};
    };
    ASSERT_TRUE(succeeded(apply(tester(QStringLiteral("Bench")))));
    EXPECT_TRUE(failedWith(LogbookFault::NameTaken, apply(tester(QStringLiteral("Bench")))));
    EXPECT_TRUE(
        failedWith(LogbookFault::NameDiffersInCaseOnly, apply(tester(QStringLiteral("bench")))));
    EXPECT_TRUE(failedWith(LogbookFault::EmptyName, apply(tester(QString()))));
}

TEST_F(StoreRulesTest, JudgingRulesAreWithinBounds) {
    Engine engine = m_engine;
    engine.rules.limit = Force::poundsForce(0.0);
    EXPECT_TRUE(failedWith(LogbookFault::BadLimit, apply(AmendEngine{engine, author()})));
    engine = m_engine;
    engine.rules.racesAhead = 61;
    EXPECT_TRUE(failedWith(LogbookFault::BadRacesAhead, apply(AmendEngine{engine, author()})));
    engine = m_engine;
    engine.layout.firingOrder.pop_back();
    EXPECT_TRUE(failedWith(LogbookFault::BadLayout, apply(AmendEngine{engine, author()})));
}

TEST_F(StoreRulesTest, APlaceInUseCannotBeTakenOutOfTheLayout) {
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    Engine single = m_engine;
    single.layout.banks = {
        {QStringLiteral("Only"), {{Cylinder(1), Valve::Intake}, {Cylinder(1), Valve::Exhaust}}}};
    single.layout.firingOrder = {Cylinder(1)};
    EXPECT_TRUE(succeeded(apply(AmendEngine{single, author()})));
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    Reading far = reading(1, 1215);
    const Spring fresh{SpringId::make(), QStringLiteral("S-2"), {}, {}, {}};
    far.spring = fresh.id;
    far.place = {Cylinder(8), Valve::Exhaust};
    ASSERT_TRUE(succeeded(apply(RecordReadings{{far}, {fresh}})));
    EXPECT_TRUE(failedWith(LogbookFault::NoSuchPlace, apply(AmendEngine{single, author()})));
}

TEST_F(StoreRulesTest, TomorrowIsTheLastDay) {
    EXPECT_TRUE(succeeded(apply(race(4, QDate(2026, 5, 3)))));
    EXPECT_TRUE(failedWith(LogbookFault::DateInFuture, apply(race(5, QDate(2026, 5, 4)))));
    EXPECT_TRUE(failedWith(LogbookFault::DateInFuture, apply(inspection(QDate(2026, 5, 4), 5))));
    EXPECT_TRUE(failedWith(LogbookFault::DateTooEarly, apply(inspection(QDate(1949, 12, 31), 0))));
    const Fitting late{FittingId::make(), m_engine.id, m_spring.id, {Cylinder(1), Valve::Intake},
                       QDate(2026, 5, 4), 3,           {},          false};
    EXPECT_TRUE(failedWith(LogbookFault::DateInFuture, apply(FitSpring{late, {}, {}, {}, {}, {}})));
}

TEST_F(StoreRulesTest, CountsOfRacesNeverFallOverTheDates) {
    EXPECT_TRUE(failedWith(LogbookFault::RacesGoBack, apply(inspection(QDate(2026, 4, 18), 2))));
    const Result<void> early = apply(inspection(QDate(2026, 4, 4), 4));
    ASSERT_TRUE(failedWith(LogbookFault::RacesGoBack, early));
    EXPECT_EQ(
        early.error().arguments,
        (QStringList{QStringLiteral("4"), QStringLiteral("2026-04-11"), QStringLiteral("3")}));
    EXPECT_TRUE(
        failedWith(LogbookFault::InspectionExists, apply(inspection(QDate(2026, 4, 11), 3))));
    EXPECT_TRUE(succeeded(apply(inspection(QDate(2026, 4, 11), 4))));
}

TEST_F(StoreRulesTest, ARaceIsNotDatedAfterAnInspectionThatCountsIt) {
    EXPECT_TRUE(failedWith(LogbookFault::RaceAfterInspection, apply(race(3, QDate(2026, 4, 12)))));
    EXPECT_TRUE(succeeded(apply(race(3, QDate(2026, 4, 11)))));
    EXPECT_TRUE(failedWith(LogbookFault::RaceExists, apply(race(3, QDate(2026, 4, 10)))));
    Inspection earlier = m_inspection;
    earlier.inspectedOn = QDate(2026, 4, 10);
    EXPECT_TRUE(
        failedWith(LogbookFault::RaceAfterInspection, apply(AmendInspection{earlier, author()})));
}

TEST_F(StoreRulesTest, ReadingsStayWithinBoundsAndPlaces) {
    Reading high = reading(1, 10001);
    EXPECT_TRUE(failedWith(LogbookFault::ReadingOutOfBounds, apply(RecordReadings{{high}, {}})));
    EXPECT_TRUE(
        failedWith(LogbookFault::ReadingOutOfBounds, apply(RecordReadings{{reading(1, 0)}, {}})));
    Reading lost = reading(1, 1215);
    lost.place = {Cylinder(9), Valve::Intake};
    EXPECT_TRUE(failedWith(LogbookFault::NoSuchPlace, apply(RecordReadings{{lost}, {}})));
    EXPECT_TRUE(log().readings.empty());
}

TEST_F(StoreRulesTest, ASpringStandsAtOnePlaceAndAHitCountsOnceInAnInspection) {
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    Reading elsewhere = reading(2, 1215);
    elsewhere.place = {Cylinder(2), Valve::Intake};
    const Result<void> moved = apply(RecordReadings{{elsewhere}, {}});
    ASSERT_TRUE(failedWith(LogbookFault::SpringElsewhere, moved));
    EXPECT_EQ(moved.error().arguments, (QStringList{QStringLiteral("S-1"), QStringLiteral("1 I")}));
    EXPECT_TRUE(failedWith(LogbookFault::HitExists, apply(RecordReadings{{reading(1, 1210)}, {}})));
    EXPECT_EQ(log().readings.size(), 1U);
}

TEST_F(StoreRulesTest, LabelsAreUniqueWithinAnEngineAlsoButForCase) {
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    Spring twin{SpringId::make(), QStringLiteral("s-1"), {}, {}, {}};
    Reading row = reading(1, 1215);
    row.spring = twin.id;
    row.place = {Cylinder(2), Valve::Intake};
    EXPECT_TRUE(
        failedWith(LogbookFault::NameDiffersInCaseOnly, apply(RecordReadings{{row}, {twin}})));
    twin.label = QStringLiteral("S-1");
    EXPECT_TRUE(failedWith(LogbookFault::NameTaken, apply(RecordReadings{{row}, {twin}})));
    twin.label = QString();
    EXPECT_TRUE(failedWith(LogbookFault::EmptyName, apply(RecordReadings{{row}, {twin}})));
    twin.label = QStringLiteral("S-2");
    ASSERT_TRUE(succeeded(apply(RecordReadings{{row}, {twin}})));
    twin.label = QStringLiteral("S-1");
    EXPECT_TRUE(failedWith(LogbookFault::NameTaken, apply(AmendSpring{twin, author()})));
}

TEST_F(StoreRulesTest, TheSameLabelMayStandInAnotherEngine) {
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    const Engine red = other(QStringLiteral("Red"));
    const Spring same{SpringId::make(), QStringLiteral("S-1"), {}, {}, {}};
    const Fitting stands{FittingId::make(), red.id, same.id, {Cylinder(1), Valve::Intake},
                         QDate(2026, 3, 1), 0,      {},      false};
    EXPECT_TRUE(succeeded(apply(AddEngine{red, {same}, {stands}})));
}

TEST_F(StoreRulesTest, AnAmendmentNeedsAReasonAndAnOriginalInItsSitting) {
    const Reading original = reading(1, 1215);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{original}, {}})));
    Reading correction = amendmentOf(original, ReadingKind::Correction, 1175);
    correction.author.why.clear();
    EXPECT_TRUE(failedWith(LogbookFault::WhyMissing, apply(AmendReading{correction})));
    EXPECT_TRUE(
        failedWith(LogbookFault::NothingToAmend,
                   apply(AmendReading{amendmentOf(original, ReadingKind::Correction, 1215)})));
    EXPECT_TRUE(failedWith(
        LogbookFault::NothingToAmend,
        apply(AmendReading{amendmentOf(reading(2, 1100), ReadingKind::Correction, 1175)})));
    const Sitting second{SittingId::make(), m_inspection.id, {}, {}, {}};
    ASSERT_TRUE(succeeded(apply(StartSitting{second})));
    correction.author = author();
    correction.sitting = second.id;
    EXPECT_TRUE(failedWith(LogbookFault::NothingToAmend, apply(AmendReading{correction})));
}

TEST_F(StoreRulesTest, WhatIsNotThereCannotBeAmended) {
    EXPECT_TRUE(failedWith(LogbookFault::NothingToAmend,
                           apply(AmendEngine{other(QStringLiteral("Red")), author()})));
    EXPECT_TRUE(failedWith(LogbookFault::NothingToAmend,
                           apply(WithdrawFitting{FittingId::make(), true, author()})));
    EXPECT_TRUE(failedWith(LogbookFault::UnknownEngine, store().engineLog(EngineId::make())));
}

TEST_F(StoreRulesTest, ARowThatRefersToNothingIsAConflict) {
    Reading orphan = reading(1, 1215);
    orphan.sitting = SittingId::make();
    EXPECT_TRUE(failedWith(StorageFault::Conflict, apply(RecordReadings{{orphan}, {}})));
    Reading unknown = reading(1, 1215);
    unknown.spring = SpringId::make();
    EXPECT_TRUE(failedWith(StorageFault::Conflict, apply(RecordReadings{{unknown}, {}})));
}

} // namespace
} // namespace coilbook
