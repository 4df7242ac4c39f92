#include "tests/core/storage/logbook_fixture.h"

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

class ChangesTest : public testing::LogbookTest {
protected:
    [[nodiscard]] Race race(int number, const QDate& day) const {
        Race made;
        made.id = RaceId::make();
        made.engine = m_engine.id;
        made.number = number;
        made.racedOn = day;
        return made;
    }

    [[nodiscard]] Fitting fitting(const SpringId& spring) const {
        return {FittingId::make(),
                m_engine.id,
                spring,
                {Cylinder(1), Valve::Intake},
                QDate(2026, 4, 11),
                3,
                QStringLiteral("lost 6 lbf"),
                false};
    }
};

TEST_F(ChangesTest, AnEngineComesBackAsItWasAdded) {
    m_engine.serial = QStringLiteral("seal 0417");
    m_engine.rules = {Force::poundsForce(4.75), 5, Caution::Thrifty};
    m_engine.rpmCeiling = 7400;
    m_engine.layout.banks.front().name = QStringLiteral("Near 'side'; “Ω”");
    const Fitting stands = fitting(m_spring.id);
    ASSERT_TRUE(succeeded(apply(AddEngine{m_engine, {m_spring}, {stands}})));
    const EngineLog stored = log();
    EXPECT_EQ(stored.engine, m_engine);
    EXPECT_EQ(stored.springs, std::vector<Spring>{m_spring});
    EXPECT_EQ(stored.fittings, std::vector<Fitting>{stands});
}

TEST_F(ChangesTest, TheEngineListCountsInspectionsAndKnowsTheNewestDay) {
    addEngine();
    startInspection();
    ASSERT_TRUE(succeeded(apply(AddRace{race(4, QDate(2026, 4, 25))})));
    const auto engines = store().engines();
    ASSERT_TRUE(succeeded(engines));
    EXPECT_EQ(*engines, (std::vector<EngineSummary>{
                            {m_engine.id, m_engine.name, {}, false, 1, QDate(2026, 4, 25)}}));
}

TEST_F(ChangesTest, AnAmendedEngineKeepsEachOldValue) {
    addEngine();
    Engine renamed = m_engine;
    renamed.name = QStringLiteral("Old Blue");
    renamed.retired = true;
    ASSERT_TRUE(succeeded(apply(AmendEngine{renamed, author()})));
    const EngineLog stored = log();
    EXPECT_EQ(stored.engine, renamed);
    ASSERT_EQ(stored.amendments.size(), 2U);
    const Amendment& name = stored.amendments.front();
    EXPECT_EQ(name.subject, Subject::Engine);
    EXPECT_EQ(name.record, m_engine.id.uuid());
    EXPECT_EQ(name.fact, QStringLiteral("name"));
    EXPECT_EQ(name.oldValue, QStringLiteral("Blue"));
    EXPECT_EQ(name.newValue, QStringLiteral("Old Blue"));
    EXPECT_EQ(name.author, author());
    EXPECT_EQ(stored.amendments.back().fact, QStringLiteral("retired"));
}

TEST_F(ChangesTest, AnAmendmentWithoutAMomentGetsTheClocks) {
    addEngine();
    m_engine.serial = QStringLiteral("17");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, {{}, {}, QStringLiteral("seal read")}})));
    EXPECT_EQ(log().amendments.front().author.at, m_clock.now());
}

TEST_F(ChangesTest, RacesComeBackAndAreAmended) {
    addEngine();
    Race whole = race(1, QDate(2026, 3, 7));
    whole.venue = QStringLiteral("Home oval");
    whole.laps = 40;
    whole.peakRpm = 7350;
    whole.overRev = false;
    whole.note = QStringLiteral("rain");
    const Race bare = race(2, QDate(2026, 3, 14));
    ASSERT_TRUE(succeeded(apply(AddRace{whole})));
    ASSERT_TRUE(succeeded(apply(AddRace{bare})));
    EXPECT_EQ(log().races, (std::vector<Race>{whole, bare}));
    Race amended = whole;
    amended.laps.reset();
    ASSERT_TRUE(succeeded(apply(AmendRace{amended, author()})));
    EXPECT_EQ(log().races.front(), amended);
    ASSERT_EQ(log().amendments.size(), 1U);
    EXPECT_EQ(log().amendments.front().oldValue, QStringLiteral("40"));
    EXPECT_EQ(log().amendments.front().newValue, QString());
}

TEST_F(ChangesTest, InspectionsSittingsAndTestersComeBack) {
    addEngine();
    const Tester tester{TesterId::make(),
                        QStringLiteral("Bench"),
                        TypedForce(600, 0, ForceUnit::PoundForce),
                        TypedForce(25, 1, ForceUnit::Newton),
                        QDate(2026, 1, 9),
                        QStringLiteral("beam type")};
    ASSERT_TRUE(succeeded(apply(AddTester{tester})));
    m_sitting.tester = tester.id;
    m_sitting.engineTemperature = Temperature::milliCelsius(-4500);
    startInspection();
    const Sitting second{SittingId::make(), m_inspection.id, {}, {}, {}};
    ASSERT_TRUE(succeeded(apply(StartSitting{second})));
    const EngineLog stored = log();
    EXPECT_EQ(stored.inspections, std::vector<Inspection>{m_inspection});
    EXPECT_EQ(stored.sittings, (std::vector<Sitting>{m_sitting, second}));
    EXPECT_EQ(stored.testers, std::vector<Tester>{tester});
}

TEST_F(ChangesTest, ClosingAnInspectionAloneLeavesNoAmendment) {
    addEngine();
    startInspection();
    m_inspection.closed = true;
    ASSERT_TRUE(succeeded(apply(AmendInspection{m_inspection, {}})));
    EXPECT_TRUE(log().inspections.front().closed);
    EXPECT_TRUE(log().amendments.empty());
    m_inspection.inspectedOn = QDate(2026, 4, 12);
    EXPECT_TRUE(failedWith(LogbookFault::WhyMissing, apply(AmendInspection{m_inspection, {}})));
    ASSERT_TRUE(succeeded(apply(AmendInspection{m_inspection, author()})));
    EXPECT_EQ(log().amendments.size(), 1U);
}

TEST_F(ChangesTest, FactsOfSittingsSpringsAndTestersAreAmended) {
    addEngine();
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Bench");
    ASSERT_TRUE(succeeded(apply(AddTester{tester})));
    startInspection();
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    m_sitting.tester = tester.id;
    m_spring.label = QStringLiteral("S-01");
    tester.calibratedOn = QDate(2026, 2, 1);
    ASSERT_TRUE(succeeded(apply(AmendSitting{m_sitting, author()})));
    ASSERT_TRUE(succeeded(apply(AmendSpring{m_spring, author()})));
    ASSERT_TRUE(succeeded(apply(AmendTester{tester, author()})));
    const EngineLog stored = log();
    EXPECT_EQ(stored.sittings.front(), m_sitting);
    EXPECT_EQ(stored.springs.front(), m_spring);
    EXPECT_EQ(stored.testers.front(), tester);
    ASSERT_EQ(stored.amendments.size(), 3U);
    EXPECT_EQ(stored.amendments[0].subject, Subject::Sitting);
    EXPECT_EQ(stored.amendments[1].subject, Subject::Spring);
    EXPECT_EQ(stored.amendments[2].subject, Subject::Tester);
}

TEST_F(ChangesTest, AReadingComesBackExactlyAsTyped) {
    addEngine();
    startInspection();
    Reading typed = reading(1, 0);
    typed.value = TypedForce(121500000, 6, ForceUnit::PoundForce);
    typed.note = QStringLiteral("keeper ticked");
    typed.author.at = m_clock.now();
    Reading newtons = reading(2, 0);
    newtons.retest = true;
    newtons.value = TypedForce(4448220000, 6, ForceUnit::Newton);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{typed, newtons}, {}})));
    EXPECT_EQ(log().readings, (std::vector<Reading>{typed, newtons}));
}

TEST_F(ChangesTest, ASpringNotKnownYetIsStoredWithItsReading) {
    addEngine();
    startInspection();
    const Spring fresh{SpringId::make(), QStringLiteral("S-2"), QStringLiteral("dual"),
                       QStringLiteral("batch 9"), QStringLiteral("tight coil")};
    Reading first = reading(1, 1230);
    first.spring = fresh.id;
    ASSERT_TRUE(succeeded(apply(RecordReadings{{first}, {fresh}})));
    EXPECT_EQ(log().springs, std::vector<Spring>{fresh});
}

TEST_F(ChangesTest, AnAmendedReadingStaysBesideItsOriginal) {
    addEngine();
    startInspection();
    const Reading original = reading(1, 1715);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{original}, {}})));
    const Reading correction = amendmentOf(original, ReadingKind::Correction, 1175);
    ASSERT_TRUE(succeeded(apply(AmendReading{correction})));
    const Reading withdrawal = amendmentOf(correction, ReadingKind::Withdrawal, 1175);
    ASSERT_TRUE(succeeded(apply(AmendReading{withdrawal})));
    EXPECT_EQ(log().readings, (std::vector<Reading>{original, correction, withdrawal}));
}

TEST_F(ChangesTest, AWithdrawnHitMakesRoomForItsNumber) {
    addEngine();
    startInspection();
    const Reading original = reading(1, 1215);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{original}, {}})));
    ASSERT_TRUE(
        succeeded(apply(AmendReading{amendmentOf(original, ReadingKind::Withdrawal, 1215)})));
    EXPECT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1220)}, {}})));
}

TEST_F(ChangesTest, ASwapWithItsBaselineIsOneChange) {
    addEngine();
    const Spring fresh{SpringId::make(), QStringLiteral("S-2"), {}, {}, {}};
    Reading baseline = reading(1, 1300);
    baseline.spring = fresh.id;
    const Fitting swap = fitting(fresh.id);
    ASSERT_TRUE(succeeded(apply(FitSpring{swap, fresh, {}, m_inspection, m_sitting, {baseline}})));
    const EngineLog stored = log();
    EXPECT_EQ(stored.fittings, std::vector<Fitting>{swap});
    EXPECT_EQ(stored.springs, std::vector<Spring>{fresh});
    EXPECT_EQ(stored.inspections, std::vector<Inspection>{m_inspection});
    EXPECT_EQ(stored.readings, std::vector<Reading>{baseline});
}

TEST_F(ChangesTest, AnUndoneSwapIsKeptAsWithdrawn) {
    addEngine();
    Fitting swap = fitting(m_spring.id);
    ASSERT_TRUE(succeeded(apply(FitSpring{swap, {}, {}, {}, {}, {}})));
    ASSERT_TRUE(succeeded(apply(WithdrawFitting{swap.id, true, author()})));
    swap.withdrawn = true;
    EXPECT_EQ(log().fittings, std::vector<Fitting>{swap});
    ASSERT_TRUE(succeeded(apply(WithdrawFitting{swap.id, false, author()})));
    EXPECT_FALSE(log().fittings.front().withdrawn);
    EXPECT_EQ(log().amendments.size(), 2U);
}

TEST_F(ChangesTest, EveryChangeMayBeRepeated) {
    const Race ran = race(1, QDate(2026, 3, 7));
    Race amendedRace = ran;
    amendedRace.note = QStringLiteral("heat race");
    Engine amendedEngine = m_engine;
    amendedEngine.serial = QStringLiteral("17");
    const Reading original = reading(1, 1715);
    const Tester tester{TesterId::make(), QStringLiteral("Bench"), {}, {}, {}, {}};
    const Fitting swap = fitting(m_spring.id);
    const std::vector<Change> changes{
        AddEngine{m_engine, {m_spring}, {}},
        AmendEngine{amendedEngine, author()},
        AddRace{ran},
        AmendRace{amendedRace, author()},
        AddTester{tester},
        StartInspection{m_inspection, m_sitting},
        RecordReadings{{original}, {}},
        AmendReading{amendmentOf(original, ReadingKind::Correction, 1175)},
        FitSpring{swap, {}, {}, {}, {}, {}},
        WithdrawFitting{swap.id, true, author()},
    };
    for (const Change& change : changes) {
        ASSERT_TRUE(succeeded(apply(change))) << change.index();
        const EngineLog once = log();
        ASSERT_TRUE(succeeded(apply(change))) << change.index();
        EXPECT_EQ(log(), once) << change.index();
    }
}

TEST_F(ChangesTest, SeveralChangesAreAllAppliedOrNone) {
    addEngine();
    const Race ran = race(4, QDate(2026, 4, 18));
    EXPECT_TRUE(failedWith(
        LogbookFault::RaceExists,
        store().applyAll({AddRace{ran}, AddRace{race(4, QDate(2026, 4, 18))}}, m_clock)));
    EXPECT_TRUE(log().races.empty());
    EXPECT_TRUE(
        succeeded(store().applyAll({AddRace{ran}, AddRace{race(5, QDate(2026, 4, 18))}}, m_clock)));
    EXPECT_EQ(log().races.size(), 2U);
}

TEST_F(ChangesTest, TheDraftOfAnEngineIsReplacedAndCleared) {
    addEngine();
    Draft draft{m_engine.id, m_inspection.id, {Cylinder(3), Valve::Exhaust}, QStringLiteral("11")};
    ASSERT_TRUE(succeeded(store().saveDraft(draft)));
    draft.typed = QStringLiteral("117.");
    ASSERT_TRUE(succeeded(store().saveDraft(draft)));
    closeStore();
    Result<LogbookStore> again = LogbookStore::open(path(), OpenMode::ReadWrite);
    ASSERT_TRUE(succeeded(again));
    EXPECT_EQ(again->draft(m_engine.id).value(), draft);
    ASSERT_TRUE(succeeded(again->clearDraft(m_engine.id)));
    EXPECT_EQ(again->draft(m_engine.id).value(), std::nullopt);
}

} // namespace
} // namespace coilbook
