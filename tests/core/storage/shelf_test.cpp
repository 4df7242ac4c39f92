#include "core/domain/shelf.h"
#include "tests/core/storage/logbook_fixture.h"

namespace coilbook {
namespace {

using testing::failedWith;
using testing::LogbookTest;
using testing::succeeded;

class ShelfTest : public LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
        ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    }

    [[nodiscard]] PlannedRace race() const {
        PlannedRace race;
        race.id = PlannedRaceId::make();
        race.engine = m_engine.id;
        race.plannedOn = QDate(2027, 3, 27); // a calendar reaches beyond tomorrow
        race.venue = QStringLiteral("Low Fen");
        race.laps = 40;
        return race;
    }

    [[nodiscard]] ShelveSpring spare(const char* label = "N-1") const {
        ShelveSpring change;
        change.newSpring =
            Spring{SpringId::make(), QString::fromLatin1(label), QStringLiteral("dual"), {}, {}};
        change.shelving.id = ShelvingId::make();
        change.shelving.engine = m_engine.id;
        change.shelving.spring = change.newSpring->id;
        change.shelving.shelvedOn = QDate(2026, 4, 12);
        change.shelving.pressure = TypedForce(12850, 2, ForceUnit::PoundForce);
        change.shelving.height = Length::inches(1.9);
        change.shelving.racesBefore = 2;
        change.shelving.reason = QStringLiteral("new spare");
        return change;
    }

    [[nodiscard]] std::vector<ShelvedSpring> shelf() {
        const EngineLog now = log();
        return shelfOf(now, historyOf(now));
    }
};

TEST_F(ShelfTest, APlannedRaceComesBackAsItWasEnteredAndIsAmended) {
    const PlannedRace planned = race();
    ASSERT_TRUE(succeeded(apply(AddPlannedRace{planned})));
    ASSERT_TRUE(succeeded(apply(AddPlannedRace{planned}))) << "twice is no error";
    EXPECT_EQ(log().plannedRaces, std::vector<PlannedRace>{planned});
    PlannedRace struck = planned;
    struck.withdrawn = true;
    EXPECT_TRUE(failedWith(LogbookFault::WhyMissing, apply(AmendPlannedRace{struck, {}})));
    ASSERT_TRUE(succeeded(apply(AmendPlannedRace{struck, author()})));
    EXPECT_EQ(log().plannedRaces.front(), struck);
    ASSERT_EQ(log().amendments.size(), 1U);
    EXPECT_EQ(log().amendments.front().subject, Subject::PlannedRace);
}

TEST_F(ShelfTest, APlannedRaceHasADayAndPossibleLaps) {
    PlannedRace planned = race();
    planned.laps = 0;
    EXPECT_TRUE(failedWith(LogbookFault::BadLaps, apply(AddPlannedRace{planned})));
    planned = race();
    planned.plannedOn = {};
    EXPECT_TRUE(failedWith(LogbookFault::DateTooEarly, apply(AddPlannedRace{planned})));
    EXPECT_TRUE(log().plannedRaces.empty());
}

TEST_F(ShelfTest, OnlyWhatIsStillToBeRunIsComing) {
    for (const QDate& day : {QDate(2026, 4, 10), QDate(2026, 4, 25), QDate(2027, 3, 27)}) {
        PlannedRace planned = race();
        planned.plannedOn = day;
        ASSERT_TRUE(succeeded(apply(AddPlannedRace{planned})));
    }
    const EngineLog now = log();
    EXPECT_EQ(comingRaces(now, QDate(2026, 4, 11)).size(), 2U);
    EXPECT_EQ(comingRaces(now, QDate(2026, 4, 25)).size(), 2U) << "not run yet on its day";
    ASSERT_TRUE(succeeded(
        apply(AddRace{{RaceId::make(), m_engine.id, 4, QDate(2026, 4, 25), {}, {}, {}, {}, {}}})));
    EXPECT_EQ(comingRaces(log(), QDate(2026, 4, 25)).size(), 1U);
}

TEST_F(ShelfTest, ASpareIsStoredWithItsSpringAndWhatWasMeasuredOfIt) {
    const ShelveSpring change = spare();
    ASSERT_TRUE(succeeded(apply(change)));
    ASSERT_TRUE(succeeded(apply(change))) << "twice is no error";
    const EngineLog now = log();
    EXPECT_EQ(now.shelvings, std::vector<Shelving>{change.shelving});
    ASSERT_EQ(now.springs.size(), 2U);
    const std::vector<ShelvedSpring> lying = shelf();
    ASSERT_EQ(lying.size(), 1U) << "the other one stands in the engine";
    EXPECT_EQ(lying.front().spring, *change.newSpring);
    EXPECT_EQ(lying.front().pressure, change.shelving.pressure);
    EXPECT_EQ(lying.front().height, change.shelving.height);
    EXPECT_EQ(lying.front().races, 2);
}

TEST_F(ShelfTest, TheNewestNewsOfASpringCounts) {
    ShelveSpring change = spare();
    ASSERT_TRUE(succeeded(apply(change)));
    Shelving scrapped = change.shelving;
    scrapped.id = ShelvingId::make();
    scrapped.to = Storage::Scrap;
    scrapped.shelvedOn = QDate(2026, 4, 20);
    ASSERT_TRUE(succeeded(apply(ShelveSpring{scrapped, {}})));
    EXPECT_EQ(shelf().front().where, Storage::Scrap);
    scrapped.withdrawn = true;
    ASSERT_TRUE(succeeded(apply(AmendShelving{scrapped, author()})));
    EXPECT_EQ(shelf().front().where, Storage::Shelf);
    change.shelving.withdrawn = true;
    ASSERT_TRUE(succeeded(apply(AmendShelving{change.shelving, author()})));
    EXPECT_TRUE(shelf().empty()) << "a spare that was taken back lies nowhere";
}

TEST_F(ShelfTest, WhatCannotBeIsNotStored) {
    ShelveSpring change = spare();
    change.shelving.height = Length::inches(19.0);
    EXPECT_TRUE(failedWith(LogbookFault::BadHeight, apply(change)));
    change = spare();
    change.shelving.pressure = TypedForce(1001, 0, ForceUnit::PoundForce);
    EXPECT_TRUE(failedWith(LogbookFault::ReadingOutOfBounds, apply(change)));
    change = spare("S-1");
    EXPECT_TRUE(failedWith(LogbookFault::NameTaken, apply(change)));
    change = spare();
    change.shelving.shelvedOn = QDate(2027, 1, 1);
    EXPECT_TRUE(failedWith(LogbookFault::DateInFuture, apply(change)));
    EXPECT_TRUE(log().shelvings.empty());
    EXPECT_EQ(log().springs.size(), 1U);
}

TEST_F(ShelfTest, CalendarAndShelfAreVerifiedLikeAllElse) {
    ASSERT_TRUE(succeeded(apply(AddPlannedRace{race()})));
    ASSERT_TRUE(succeeded(apply(spare())));
    EXPECT_TRUE(store().verify()->findings.empty());
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE planned_race SET laps = 41"))));
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE shelving SET put_to = 'scrap'"))));
    EXPECT_FALSE(store().verify()->findings.empty());
}

} // namespace
} // namespace coilbook
