#include "core/storage/change_text.h"
#include "core/storage/spool.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QFile>
#include <QFileInfo>

namespace coilbook {
namespace {

using testing::succeeded;

/// One change of each kind, with as many facts as it may have.
std::vector<Change> changesOfAllKinds() {
    const Authorship author{QStringLiteral("Kim \"K\" Ö"),
                            {QStringLiteral("2026-05-02T19:00:00.000Z"), -300},
                            QStringLiteral("slip of\nthe pen")};
    Engine engine;
    engine.id = EngineId::make();
    engine.name = QStringLiteral("Blue");
    engine.retired = true;
    const Place place{Cylinder(3), Valve::Exhaust};
    const QDate day(2026, 5, 2);
    const Spring spring{SpringId::make(), QStringLiteral("S-27"), QStringLiteral("part"),
                        QStringLiteral("batch"), QStringLiteral("note")};
    const Fitting fitting{FittingId::make(),
                          engine.id,
                          spring.id,
                          place,
                          day,
                          7,
                          QStringLiteral("past the limit"),
                          false};
    Race race;
    race.id = RaceId::make();
    race.engine = engine.id;
    race.number = 7;
    race.racedOn = day;
    race.overRev = false;
    const Inspection inspection{InspectionId::make(), engine.id, day, 7, false};
    const Sitting sitting{SittingId::make(), inspection.id, TesterId::make(), author.who,
                          Temperature::milliCelsius(-12500)};
    Reading reading;
    reading.id = ReadingId::make();
    reading.sitting = sitting.id;
    reading.spring = spring.id;
    reading.place = place;
    reading.hit = 3;
    reading.retest = true;
    reading.value = TypedForce(9999999999, 6, ForceUnit::Newton); // more than an int holds
    Reading correction = reading;
    correction.id = ReadingId::make();
    correction.kind = ReadingKind::Correction;
    correction.amends = reading.id;
    correction.author = author;
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Bench");
    tester.range = TypedForce(600, 0, ForceUnit::PoundForce);
    const Running running{RunningId::make(), engine.id, day, 3, 40, {}, {}, true};
    const LevelChange level{
        LevelChangeId::make(), engine.id, spring.id, LevelChangeKind::Retainer, day, 3, {}, false};
    const Decision decision{DecisionId::make(), inspection.id, spring.id,
                            ReadingJudgement::SetAside, author};
    Calibration calibration;
    calibration.id = CalibrationId::make();
    calibration.tester = tester.id;
    calibration.calibratedOn = day;
    calibration.points = {
        {TypedForce(20, 0, ForceUnit::PoundForce), TypedForce(205, 1, ForceUnit::PoundForce)}};
    RepeatabilityStudy study;
    study.id = StudyId::make();
    study.tester = tester.id;
    study.studiedOn = day;
    study.springs = QStringList{QStringLiteral("S-1"), QStringLiteral("S-2")};
    study.persons = QStringList{QStringLiteral("Kim")};
    study.hits = 2;
    study.readings.resize(4);
    PlannedRace planned;
    planned.id = PlannedRaceId::make();
    planned.engine = engine.id;
    planned.plannedOn = day;
    planned.laps = 30;
    Shelving shelving;
    shelving.id = ShelvingId::make();
    shelving.engine = engine.id;
    shelving.spring = spring.id;
    shelving.shelvedOn = day;
    shelving.pressure = TypedForce(1305, 1, ForceUnit::PoundForce);
    FitSpring swap;
    swap.fitting = fitting;
    swap.newSpring = spring;
    swap.newInspection = inspection;
    swap.newSitting = sitting;
    swap.baseline = {reading, reading};
    swap.outgoing = shelving;
    return {AddEngine{engine, {spring}, {fitting}},
            AmendEngine{engine, author},
            AddRace{race},
            AmendRace{race, author},
            StartInspection{inspection, sitting},
            StartSitting{sitting},
            AmendInspection{inspection, author},
            AmendSitting{sitting, author},
            RecordReadings{{reading}, {spring}},
            AmendReading{correction},
            swap,
            WithdrawFitting{fitting.id, true, author},
            AmendSpring{spring, author},
            DecideReading{decision},
            AddRunning{running},
            AmendRunning{running, author},
            AddLevelChange{level},
            AmendLevelChange{level, author},
            AddPlannedRace{planned},
            AmendPlannedRace{planned, author},
            ShelveSpring{shelving, spring},
            AmendShelving{shelving, author},
            AddTester{tester},
            AmendTester{tester, author},
            AddCalibration{calibration},
            AmendCalibration{calibration, author},
            AddStudy{study},
            AmendStudy{study, author}};
}

class SpoolTest : public ::testing::Test {
protected:
    [[nodiscard]] QString path() const { return m_folder.filePath(QStringLiteral("own/waiting")); }

    QTemporaryDir m_folder;
};

TEST_F(SpoolTest, EveryKindOfChangeComesBackAsItWas) {
    const std::vector<Change> changes = changesOfAllKinds();
    ASSERT_EQ(changes.size(), std::variant_size_v<Change>);
    const QString text = storage::textOf(changes);
    const Result<std::vector<Change>> read = storage::changesFrom(text);
    ASSERT_TRUE(succeeded(read));
    ASSERT_EQ(read->size(), changes.size());
    EXPECT_EQ(storage::textOf(*read), text);
    EXPECT_EQ(std::get<AddEngine>(read->front()).engine, std::get<AddEngine>(changes[0]).engine);
    EXPECT_EQ(std::get<RecordReadings>((*read)[8]).readings,
              std::get<RecordReadings>(changes[8]).readings);
    EXPECT_EQ(std::get<AmendReading>((*read)[9]).reading,
              std::get<AmendReading>(changes[9]).reading);
    EXPECT_EQ(std::get<FitSpring>((*read)[10]).newSitting,
              std::get<FitSpring>(changes[10]).newSitting);
    EXPECT_EQ(std::get<FitSpring>((*read)[10]).outgoing, std::get<FitSpring>(changes[10]).outgoing);
    EXPECT_EQ(std::get<WithdrawFitting>((*read)[11]).author,
              std::get<WithdrawFitting>(changes[11]).author);
    EXPECT_EQ(std::get<AmendTester>((*read)[23]).tester, std::get<AmendTester>(changes[23]).tester);
    EXPECT_EQ(std::get<AddCalibration>((*read)[24]).calibration,
              std::get<AddCalibration>(changes[24]).calibration);
    EXPECT_EQ(std::get<AmendStudy>((*read)[27]).study, std::get<AmendStudy>(changes[27]).study);
}

TEST_F(SpoolTest, WhatIsNoTextOfChangesIsRefused) {
    for (const char* text :
         {"", "[]", "{}", "[{\"kind\":\"eat-spring\"}]", "[{\"kind\":\"add-race\"}]",
          "[{\"kind\":\"add-race\",\"record\":[1,2]}]"}) {
        EXPECT_FALSE(storage::changesFrom(QString::fromUtf8(text))) << text;
    }
}

TEST_F(SpoolTest, KeepsEntriesInOrderForEachLogbookUntilTheyAreForgotten) {
    const std::vector<Change> changes = changesOfAllKinds();
    const QString blue = QStringLiteral("/stick/blue.coilbook");
    {
        Result<Spool> spool = Spool::open(path());
        ASSERT_TRUE(succeeded(spool));
        for (std::size_t i = 8; i < 11; ++i) {
            const WaitingEntry entry{0, {changes[i]}, QStringLiteral("row"), {}, {}};
            ASSERT_TRUE(succeeded(spool->keep(blue, entry)));
        }
        ASSERT_TRUE(
            succeeded(spool->keep(QStringLiteral("/other"), {0, {changes[0]}, {}, {}, {}})));
    }
    Result<Spool> spool = Spool::open(path()); // after a restart
    ASSERT_TRUE(succeeded(spool));
    Result<std::vector<WaitingEntry>> entries = spool->entriesOf(blue);
    ASSERT_TRUE(succeeded(entries));
    ASSERT_EQ(entries->size(), 3U);
    EXPECT_TRUE(std::holds_alternative<FitSpring>((*entries)[2].changes.front()));
    ASSERT_TRUE(succeeded(spool->forget((*entries)[0].number)));
    ASSERT_TRUE(succeeded(spool->markRefused((*entries)[1].number, QStringLiteral("a rule"))));
    entries = spool->entriesOf(blue);
    ASSERT_EQ(entries->size(), 2U);
    EXPECT_EQ(entries->front().refused, QStringLiteral("a rule"));
}

TEST_F(SpoolTest, HasRoomToSpareSoThatAFullDiskDoesNotStopIt) {
    Result<Spool> spool = Spool::open(path());
    ASSERT_TRUE(succeeded(spool));
    const auto sizes = [&] {
        return std::pair(QFileInfo(path()).size(),
                         QFileInfo(path() + QStringLiteral("-journal")).size());
    };
    const auto before = sizes();
    EXPECT_GT(before.first, 256 * 1024);
    EXPECT_GT(before.second, 0);
    const WaitingEntry entry{0, {changesOfAllKinds()[8]}, {}, {}, {}};
    for (int i = 0; i < 200; ++i) {
        ASSERT_TRUE(succeeded(spool->keep(QStringLiteral("/stick/blue.coilbook"), entry)));
    }
    EXPECT_EQ(sizes(), before) << "it has grown, which a full disk would not let it";
}

TEST_F(SpoolTest, AFileOfAnotherKindIsLeftAlone) {
    const QString other = m_folder.filePath(QStringLiteral("shop.coilbook"));
    ASSERT_TRUE(succeeded(LogbookStore::create(other)));
    EXPECT_FALSE(Spool::open(other));
    EXPECT_TRUE(succeeded(LogbookStore::open(other, OpenMode::ReadWrite)));
}

} // namespace
} // namespace coilbook
