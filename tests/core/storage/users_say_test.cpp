#include "tests/core/storage/logbook_fixture.h"

#include <QFile>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

/// An engine with one spring read once, on 2026-04-11 after three races.
class UsersSayTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
        ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    }

    [[nodiscard]] Running testDay() const {
        Running running;
        running.id = RunningId::make();
        running.engine = m_engine.id;
        running.ranOn = QDate(2026, 4, 18);
        running.engineRaces = 3;
        running.laps = 60;
        running.note = QStringLiteral("test day");
        return running;
    }

    [[nodiscard]] LevelChange shim() const {
        return {LevelChangeId::make(),
                m_engine.id,
                m_spring.id,
                LevelChangeKind::Shim,
                QDate(2026, 4, 18),
                3,
                QStringLiteral("0.015 in"),
                false};
    }

    [[nodiscard]] Decision decision(ReadingJudgement judgement) const {
        return {DecisionId::make(), m_inspection.id, m_spring.id, judgement, author()};
    }
};

TEST_F(UsersSayTest, RunningComesBackAsItWasAddedAndIsAmended) {
    const Running laps = testDay();
    Running pulls = testDay();
    pulls.laps.reset();
    pulls.raceThousandths = 250;
    pulls.ranOn = QDate(2026, 4, 2);
    pulls.engineRaces = 2;
    ASSERT_TRUE(succeeded(apply(AddRunning{laps})));
    ASSERT_TRUE(succeeded(apply(AddRunning{pulls})));
    ASSERT_TRUE(succeeded(apply(AddRunning{pulls})));
    EXPECT_EQ(log().running, (std::vector<Running>{pulls, laps})) << "by day";
    Running undone = laps;
    undone.withdrawn = true;
    EXPECT_TRUE(failedWith(LogbookFault::WhyMissing, apply(AmendRunning{undone, {}})));
    ASSERT_TRUE(succeeded(apply(AmendRunning{undone, author()})));
    EXPECT_EQ(log().running.back(), undone);
    ASSERT_EQ(log().amendments.size(), 1U);
    EXPECT_EQ(log().amendments.front().subject, Subject::Running);
}

TEST_F(UsersSayTest, RunningSaysEitherLapsOrAPartOfARace) {
    Running running = testDay();
    running.raceThousandths = 500;
    EXPECT_TRUE(failedWith(LogbookFault::RunningUnclear, apply(AddRunning{running})));
    running.laps.reset();
    EXPECT_TRUE(succeeded(apply(AddRunning{running})));
    running.raceThousandths.reset();
    EXPECT_TRUE(failedWith(LogbookFault::RunningUnclear, apply(AmendRunning{running, author()})));
    for (const int outside : {0, 10001}) {
        running.raceThousandths = outside;
        EXPECT_TRUE(
            failedWith(LogbookFault::RunningUnclear, apply(AmendRunning{running, author()})));
    }
}

TEST_F(UsersSayTest, RunningAndLevelChangesStandBetweenTheInspectionsBeforeAndAfter) {
    Running running = testDay();
    running.engineRaces = 2; // the inspection a week before counts three
    EXPECT_TRUE(failedWith(LogbookFault::RacesGoBack, apply(AddRunning{running})));
    running.ranOn = m_inspection.inspectedOn; // before that inspection, on its day
    EXPECT_TRUE(succeeded(apply(AddRunning{running})));
    LevelChange change = shim();
    change.changedOn = QDate(2026, 4, 1);
    change.engineRaces = 4;
    EXPECT_TRUE(failedWith(LogbookFault::RacesGoBack, apply(AddLevelChange{change})));
    change.changedOn = QDate(2026, 5, 4);
    EXPECT_TRUE(failedWith(LogbookFault::DateInFuture, apply(AddLevelChange{change})));
    change.changedOn = QDate(2026, 4, 25);
    ASSERT_TRUE(succeeded(apply(AddLevelChange{change})));
    const Inspection later{InspectionId::make(), m_engine.id, QDate(2026, 5, 1), 3, true};
    const Sitting sitting{SittingId::make(), later.id, {}, {}, {}};
    EXPECT_TRUE(failedWith(LogbookFault::RacesGoBack, apply(StartInspection{later, sitting})));
    change.withdrawn = true;
    ASSERT_TRUE(succeeded(apply(AmendLevelChange{change, author()})));
    EXPECT_TRUE(succeeded(apply(StartInspection{later, sitting})))
        << "what is withdrawn stands in nobody's way";
}

TEST_F(UsersSayTest, ALevelChangeComesBackAndNamesASpringOfTheEngine) {
    for (const LevelChangeKind kind :
         {LevelChangeKind::Shim, LevelChangeKind::ValveSeatWork, LevelChangeKind::Retainer,
          LevelChangeKind::Move, LevelChangeKind::Other}) {
        LevelChange change = shim();
        change.kind = kind;
        ASSERT_TRUE(succeeded(apply(AddLevelChange{change})));
        EXPECT_EQ(log().levelChanges.back(), change);
    }
    LevelChange stranger = shim();
    stranger.spring = SpringId::make();
    EXPECT_TRUE(failedWith(LogbookFault::UnknownPlaceOfSpring, apply(AddLevelChange{stranger})));
}

TEST_F(UsersSayTest, DecisionsAreKeptInOrderAndTheNewestIsInForce) {
    const Decision aside = decision(ReadingJudgement::SetAside);
    const Decision confirmed = decision(ReadingJudgement::DropConfirmed);
    Decision back = decision(ReadingJudgement::LeftToModel);
    back.author.at = {};
    ASSERT_TRUE(succeeded(apply(DecideReading{aside})));
    ASSERT_TRUE(succeeded(apply(DecideReading{aside})));
    ASSERT_TRUE(succeeded(apply(DecideReading{confirmed})));
    EXPECT_EQ(log().decisions, (std::vector<Decision>{aside, confirmed}));
    EXPECT_EQ(judgementInForce(log().decisions, m_inspection.id, m_spring.id),
              ReadingJudgement::DropConfirmed);
    EXPECT_EQ(judgementInForce(log().decisions, m_inspection.id, SpringId::make()),
              ReadingJudgement::LeftToModel);
    ASSERT_TRUE(succeeded(apply(DecideReading{back})));
    back.author.at = m_clock.now();
    EXPECT_EQ(log().decisions.back(), back) << "without a moment it gets the clock's";
}

TEST_F(UsersSayTest, ADecisionNeedsAReadingToDecideAbout) {
    Decision about = decision(ReadingJudgement::Kept);
    about.spring = SpringId::make();
    EXPECT_TRUE(failedWith(LogbookFault::NothingToDecide, apply(DecideReading{about})));
    const Reading taken = log().readings.front();
    ASSERT_TRUE(succeeded(apply(AmendReading{amendmentOf(taken, ReadingKind::Withdrawal, 1215)})));
    EXPECT_TRUE(failedWith(LogbookFault::NothingToDecide,
                           apply(DecideReading{decision(ReadingJudgement::Kept)})));
}

TEST_F(UsersSayTest, TheEngineSaysHowItsWearIsCounted) {
    m_engine.springsRunIn = true;
    m_engine.exposureUnit = ExposureUnit::Laps;
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    EXPECT_EQ(log().engine, m_engine);
    ASSERT_EQ(log().amendments.size(), 2U);
    EXPECT_EQ(log().amendments.back().oldValue, QStringLiteral("races"));
}

TEST_F(UsersSayTest, ItIsVerifiedLikeAllElse) {
    ASSERT_TRUE(succeeded(apply(AddRunning{testDay()})));
    ASSERT_TRUE(succeeded(apply(AddLevelChange{shim()})));
    ASSERT_TRUE(succeeded(apply(DecideReading{decision(ReadingJudgement::Kept)})));
    Running undone = log().running.front();
    undone.withdrawn = true;
    ASSERT_TRUE(succeeded(apply(AmendRunning{undone, author()})));
    const Result<VerifyReport> whole = store().verify();
    ASSERT_TRUE(succeeded(whole));
    EXPECT_TRUE(whole->findings.empty());
    // Engine, spring, inspection, sitting, reading; running, level change, decision, amendment.
    EXPECT_EQ(whole->rowsChecked, 9);
    for (const char* sql :
         {"UPDATE decision SET judgement = 'set_aside'", "DELETE FROM decision"}) {
        EXPECT_TRUE(failedWith(StorageFault::Conflict, runBeside(QString::fromLatin1(sql)))) << sql;
    }
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE running SET laps = 61"))));
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE level_change SET kind = 'other'"))));
    const Result<VerifyReport> changed = store().verify();
    ASSERT_TRUE(succeeded(changed));
    EXPECT_EQ(changed->findings.size(), 2U);
}

/// A logbook as the program wrote it before the user's say existed (tests/data/logbooks/SOURCE).
class EarlierLogbookTest : public ::testing::Test {
protected:
    void SetUp() override {
        ASSERT_TRUE(
            QFile::copy(QStringLiteral(COILBOOK_TEST_DATA "/logbooks/version_1.coilbook"), m_path));
        ASSERT_TRUE(QFile::setPermissions(m_path, QFile::ReadOwner | QFile::WriteOwner));
    }

    [[nodiscard]] QByteArray bytes() const {
        QFile file(m_path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }

    /// What the file is known to hold, see SOURCE.
    static void expectWhole(const LogbookStore& store) {
        const auto report = store.verify();
        ASSERT_TRUE(succeeded(report));
        EXPECT_TRUE(report->findings.empty());
        EXPECT_EQ(report->rowsChecked, 16);
        const auto engines = store.engines();
        ASSERT_TRUE(succeeded(engines));
        ASSERT_EQ(engines->size(), 1U);
        const auto log = store.engineLog(engines->front().id);
        ASSERT_TRUE(succeeded(log));
        EXPECT_EQ(log->engine.serial, QStringLiteral("17"));
        EXPECT_FALSE(log->engine.springsRunIn);
        EXPECT_EQ(log->engine.exposureUnit, ExposureUnit::Races);
        EXPECT_EQ(log->readings.size(), 5U);
        EXPECT_EQ(log->races.size(), 2U);
        ASSERT_EQ(log->amendments.size(), 1U);
        EXPECT_EQ(log->amendments.front().fact, QStringLiteral("serial"));
        EXPECT_TRUE(log->running.empty() && log->levelChanges.empty() && log->decisions.empty());
    }

    QTemporaryDir m_folder;
    QString m_path = m_folder.filePath(QStringLiteral("earlier.coilbook"));
};

TEST_F(EarlierLogbookTest, ItIsBroughtUpToDateAndHoldsTheSame) {
    const auto store = LogbookStore::open(m_path, OpenMode::ReadWrite);
    ASSERT_TRUE(succeeded(store));
    expectWhole(*store);
}

TEST_F(EarlierLogbookTest, ReadingItLeavesItAsItWas) {
    const QByteArray before = bytes();
    {
        const auto store = LogbookStore::open(m_path, OpenMode::ReadOnly);
        ASSERT_TRUE(succeeded(store));
        expectWhole(*store);
    }
    EXPECT_EQ(bytes(), before);
}

TEST_F(EarlierLogbookTest, ItTakesTheUsersSayAndAmendmentsOfIt) {
    testing::FixedClock clock{QDate(2026, 5, 2)};
    auto store = LogbookStore::open(m_path, OpenMode::ReadWrite);
    ASSERT_TRUE(succeeded(store));
    const EngineId engine = store->engines()->front().id;
    Running running;
    running.id = RunningId::make();
    running.engine = engine;
    running.ranOn = QDate(2026, 4, 18);
    running.engineRaces = 2;
    running.laps = 30;
    ASSERT_TRUE(succeeded(store->apply(AddRunning{running}, clock)));
    running.laps = 40;
    ASSERT_TRUE(succeeded(store->apply(
        AmendRunning{running, {QStringLiteral("Kim"), {}, QStringLiteral("counted again")}},
        clock)));
    EXPECT_EQ(store->engineLog(engine)->amendments.size(), 2U);
    EXPECT_TRUE(store->verify()->findings.empty());
}

TEST_F(EarlierLogbookTest, DamageThatItHadBeforeStaysVisible) {
    {
        const auto connection =
            storage::Connection::open(m_path, storage::Connection::Access::ReadWrite);
        ASSERT_TRUE(succeeded(connection));
        ASSERT_TRUE(
            succeeded((*connection)->run(QStringLiteral("UPDATE engine SET serial = '71'"))));
    }
    const auto store = LogbookStore::open(m_path, OpenMode::ReadWrite);
    ASSERT_TRUE(succeeded(store));
    const auto report = store->verify();
    ASSERT_TRUE(succeeded(report));
    ASSERT_FALSE(report->findings.empty());
    EXPECT_TRUE(report->findings.front().where.startsWith(QStringLiteral("engine ")));
}

} // namespace
} // namespace coilbook
