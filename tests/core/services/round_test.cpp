#include "core/services/round.h"
#include "core/services/round_verdict.h"
#include "tests/core/services/round_log.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::place;
using testing::RoundLog;

const RoundStop& stopAt(const Round& round, const Place& where) {
    return round.stops().at(round.indexOf(where).value());
}

TEST(RoundTest, ANewEngineIsAskedForSixteenSpringsNamedAfterTheirPlaces) {
    RoundLog maker;
    const InspectionId now = maker.inspect("2026-03-01", 0, false);
    const Round round(maker.log, now, RoundOrder::ByCylinder);
    ASSERT_EQ(round.stops().size(), 16U);
    EXPECT_EQ(round.stops()[5].label, QStringLiteral("3E"));
    EXPECT_FALSE(round.stops()[5].spring.has_value());
    EXPECT_EQ(round.firstUntested(), 0U);
    EXPECT_EQ(round.tested(), 0U);
}

TEST(RoundTest, ASuggestedNameDoesNotMeetOneThatIsTaken) {
    RoundLog maker;
    maker.inspect("2026-03-01", 0);
    maker.read(place(1, Valve::Intake), "3e", "120");
    const InspectionId now = maker.inspect("2026-04-01", 1, false);
    const Round round(maker.log, now, RoundOrder::ByCylinder);
    EXPECT_EQ(stopAt(round, place(3, Valve::Exhaust)).label, QStringLiteral("3E-2"));
}

TEST(RoundTest, AStopKnowsItsSpringItsBaselineAndItsPreviousReading) {
    RoundLog maker;
    const Place here = place(3, Valve::Exhaust);
    maker.inspect("2026-03-01", 0);
    maker.read(here, "S-27", "121.0", 1);
    maker.read(here, "S-27", "122.0", 2);
    maker.inspect("2026-03-15", 2);
    maker.read(here, "S-27", "119.5");
    const InspectionId now = maker.inspect("2026-04-01", 4, false);
    const Round round(maker.log, now, RoundOrder::ByBank);
    const RoundStop& stop = stopAt(round, here);
    EXPECT_EQ(stop.label, QStringLiteral("S-27"));
    EXPECT_EQ(stop.baseline->mean, Force::poundsForce(121.5));
    EXPECT_EQ(stop.baseline->races, 0);
    EXPECT_EQ(stop.previous->mean, Force::poundsForce(119.5));
    EXPECT_EQ(stop.previous->on, QDate(2026, 3, 15));
    EXPECT_TRUE(stop.hits.empty());
    EXPECT_EQ(stop.nextHit, 1);
}

// 121.5 to 121.0, a shim, 128.0 to 127.0: half a pound before it and one after it.
TEST(RoundTest, TheMeasuredLossStartsAgainAfterALevelChange) {
    RoundLog maker;
    const Place here = place(3, Valve::Exhaust);
    std::vector<InspectionId> inspections;
    const auto read = [&](const char* day, int races, const char* value) {
        inspections.push_back(maker.inspect(day, races));
        maker.read(here, "S-27", value);
    };
    read("2026-03-01", 0, "121.5");
    read("2026-03-15", 2, "121.0");
    read("2026-04-01", 4, "128.0");
    read("2026-04-15", 6, "127.0");
    maker.log.levelChanges.push_back({LevelChangeId::make(),
                                      maker.log.engine.id,
                                      maker.spring("S-27"),
                                      LevelChangeKind::Shim,
                                      QDate(2026, 3, 20),
                                      2,
                                      {},
                                      false});
    const auto verdictAt = [&](std::size_t inspection) {
        const Round round(maker.log, inspections[inspection], RoundOrder::ByBank);
        return verdictOf(stopAt(round, here), Force::poundsForce(5.0)).value();
    };
    EXPECT_EQ(verdictAt(1).loss, Force::poundsForce(0.5));
    EXPECT_EQ(verdictAt(2).loss, Force::poundsForce(0.5));
    EXPECT_FALSE(verdictAt(2).sincePrevious.has_value()) << "a step is neither loss nor gain";
    EXPECT_EQ(verdictAt(3).loss, Force::poundsForce(1.5));
    EXPECT_EQ(verdictAt(3).sincePrevious, Force::poundsForce(1.0));
    maker.log.levelChanges.front().withdrawn = true;
    EXPECT_EQ(verdictAt(3).loss, Force::poundsForce(-5.5));
}

TEST(RoundTest, AReadingOfAnEarlierDayLooksNotIntoTheFuture) {
    RoundLog maker;
    const Place here = place(2, Valve::Intake);
    const InspectionId now = maker.inspect("2026-02-01", 0, false);
    maker.inspect("2026-03-01", 2);
    maker.read(here, "A", "120");
    const Round round(maker.log, now, RoundOrder::ByBank);
    const RoundStop& stop = stopAt(round, here);
    EXPECT_EQ(stop.label, QStringLiteral("A")) << "its first known spring stood there before";
    EXPECT_FALSE(stop.baseline.has_value());
    EXPECT_FALSE(stop.previous.has_value());
}

TEST(RoundTest, AfterASwapTheNewSpringIsNextWithoutABaseline) {
    RoundLog maker;
    const Place here = place(4, Valve::Exhaust);
    maker.inspect("2026-03-01", 0);
    maker.read(here, "old", "120");
    const InspectionId now = maker.inspect("2026-04-01", 3, false);
    maker.read(here, "old", "113");
    const SpringId fresh = maker.spring("new");
    maker.log.fittings.push_back({FittingId::make(), maker.log.engine.id, fresh, here,
                                  QDate(2026, 4, 1), 3, QStringLiteral("worn"), false});
    const Round round(maker.log, now, RoundOrder::ByBank);
    const RoundStop& stop = stopAt(round, here);
    EXPECT_EQ(stop.spring, fresh);
    EXPECT_FALSE(stop.isTested());
    EXPECT_FALSE(stop.previous.has_value());

    maker.read(here, "new", "124");
    const Round after(maker.log, now, RoundOrder::ByBank);
    EXPECT_EQ(stopAt(after, here).label, QStringLiteral("new"));
    EXPECT_TRUE(stopAt(after, here).isTested());
}

TEST(RoundTest, RetestsCrossOutTheFirstHitsAndAWithdrawnHitKeepsItsNumber) {
    RoundLog maker;
    const Place here = place(1, Valve::Intake);
    const InspectionId now = maker.inspect("2026-03-01", 0, false);
    maker.read(here, "A", "110", 1);
    maker.read(here, "A", "120", 2, true);
    const ReadingId slip = maker.read(here, "A", "12", 3, true);
    Reading withdrawal = maker.log.readings.back();
    withdrawal.id = ReadingId::make();
    withdrawal.kind = ReadingKind::Withdrawal;
    withdrawal.amends = slip;
    maker.log.readings.push_back(withdrawal);

    const Round round(maker.log, now, RoundOrder::ByBank);
    const RoundStop& stop = stopAt(round, here);
    ASSERT_EQ(stop.hits.size(), 2U);
    EXPECT_TRUE(stop.hits[0].crossedOut);
    EXPECT_FALSE(stop.hits[1].crossedOut);
    EXPECT_TRUE(stop.hasRetest());
    EXPECT_EQ(stop.mean(), Force::poundsForce(120));
    EXPECT_EQ(stop.nextHit, 4);
}

TEST(RoundTest, TheNextStopIsTheNextOneWithoutAReading) {
    RoundLog maker;
    const InspectionId now = maker.inspect("2026-03-01", 0, false);
    maker.read(place(1, Valve::Intake), "a", "120");
    maker.read(place(2, Valve::Intake), "b", "120");
    maker.read(place(8, Valve::Exhaust), "c", "120");
    const Round round(maker.log, now, RoundOrder::ByCylinder);
    EXPECT_EQ(round.firstUntested(), 1U);
    EXPECT_EQ(round.untestedAfter(1), 3U);
    EXPECT_EQ(round.untestedAfter(14), std::nullopt);
    EXPECT_EQ(round.tested(), 3U);
}

TEST(RoundTest, TheMedianOfTheOthersComesFromThisInspectionOnceThreeAreRead) {
    RoundLog maker;
    maker.inspect("2026-03-01", 0);
    for (const int cylinder : {1, 2, 3, 4}) {
        maker.read(place(cylinder, Valve::Intake), QByteArray::number(cylinder).constData(), "125");
    }
    const InspectionId now = maker.inspect("2026-04-01", 2, false);
    maker.read(place(1, Valve::Intake), "1", "118");
    maker.read(place(2, Valve::Intake), "2", "119");
    const Place fourth = place(4, Valve::Intake);
    const Round early(maker.log, now, RoundOrder::ByCylinder);
    EXPECT_EQ(stopAt(early, fourth).medianOfOthers, Force::poundsForce(125));
    maker.read(place(3, Valve::Intake), "3", "121");
    const Round late(maker.log, now, RoundOrder::ByCylinder, fourth);
    ASSERT_EQ(late.stops().size(), 1U) << "a quick test goes to one place only";
    EXPECT_EQ(stopAt(late, fourth).medianOfOthers, Force::poundsForce(119));
}

TEST(RoundTest, TwoSpringsAreNoSetToCompareWith) {
    RoundLog maker;
    const InspectionId now = maker.inspect("2026-04-01", 2, false);
    maker.read(place(1, Valve::Intake), "1", "118");
    maker.read(place(2, Valve::Intake), "2", "119");
    const Round round(maker.log, now, RoundOrder::ByCylinder);
    EXPECT_FALSE(stopAt(round, place(3, Valve::Intake)).medianOfOthers.has_value());
}

} // namespace
} // namespace coilbook
