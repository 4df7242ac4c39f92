#include "core/wear/events.h"
#include "core/wear/exposure.h"
#include "core/wear/season_builder.h"
#include "tests/support/history_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::HistoryBuilder;
using testing::intake;

// Inspections after 0, 2 and 4 races; races of 50, 150, 100 and 100 laps: 100 on the mean.
HistoryBuilder lapped() {
    HistoryBuilder builder;
    builder.spring(intake(1), "S-1", {{0, "121.5"}, {2, "121.0"}, {4, "120.5"}});
    builder.race(1, {}, 50).race(2, {}, 150).race(3, {}, 100).race(4, {}, 100);
    return builder;
}

std::vector<double> exposuresOf(const wear::SeasonOfHistory& made, std::size_t life = 0) {
    std::vector<double> exposures;
    for (const wear::Cell& cell : made.season.lives[life].cells) {
        exposures.push_back(cell.x);
    }
    return exposures;
}

TEST(ExposureTest, RacesCountOneEachUnlessTheWearGoesByLaps) {
    EXPECT_EQ(exposuresOf(wear::seasonOf(lapped().build())), (std::vector<double>{0, 2, 4}));
}

TEST(ExposureTest, LapsCountInMeanRaces) {
    HistoryBuilder builder = lapped();
    builder.race(5, {}, 200); // the mean is 120 now
    const wear::SeasonOfHistory made = wear::seasonOf(builder.byLaps().build());
    const std::vector<double> expected{0.0, 200.0 / 120.0, 400.0 / 120.0};
    ASSERT_EQ(made.season.lives[0].cells.size(), 3U);
    for (std::size_t c = 0; c < 3; ++c) {
        EXPECT_NEAR(made.season.lives[0].cells[c].x, expected[c], 1e-12);
        EXPECT_NEAR(made.season.sessions[c], expected[c], 1e-12) << "x and X alike";
    }
    EXPECT_NEAR(made.season.now, 5.0, 1e-12);
    EXPECT_NEAR(made.season.lives[0].xNow, 5.0, 1e-12);
    EXPECT_EQ(made.racesWithoutLaps, 0);
}

TEST(ExposureTest, OneRaceWithoutLapsMakesAllCountOneEach) {
    HistoryBuilder builder = lapped();
    const wear::SeasonOfHistory made = wear::seasonOf(builder.race(5).byLaps().build());
    EXPECT_EQ(exposuresOf(made), (std::vector<double>{0, 2, 4}));
    EXPECT_EQ(made.racesWithoutLaps, 1);
    HistoryBuilder unlogged = lapped();
    unlogged.spring(intake(1), "S-1", {{6, "120.0"}});
    EXPECT_EQ(wear::seasonOf(unlogged.byLaps().build()).racesWithoutLaps, 2)
        << "races that are counted but not logged have no laps either";
}

TEST(ExposureTest, RacesBeforeTheFirstInspectionNeedNoLaps) {
    HistoryBuilder builder;
    builder.spring(intake(1), "S-1", {{7, "121.5"}, {8, "121.0"}, {9, "120.5"}});
    const auto made = wear::seasonOf(builder.race(8, {}, 30).race(9, {}, 90).byLaps().build());
    EXPECT_EQ(exposuresOf(made), (std::vector<double>{0, 0.5, 2}));
    EXPECT_EQ(made.racesWithoutLaps, 0);
}

TEST(ExposureTest, RunningCountsForInspectionsOnItsDayOrLater) {
    // 25 laps of 100 a race, on the day of the second inspection; half a race the day after it.
    HistoryBuilder builder = lapped();
    builder.running(2, 0, 25).running(2, 1, {}, 500);
    const EngineLog log = builder.log();
    const wear::SeasonOfHistory made = wear::seasonOf(historyOf(log));
    EXPECT_EQ(exposuresOf(made), (std::vector<double>{0, 2.25, 4.75}));
    EXPECT_EQ(made.season.sessions, (std::vector<double>{0, 2.25, 4.75}));
    EXPECT_EQ(made.season.now, 4.75);
    EXPECT_EQ(made.runningNow, std::vector<double>{0.75});
    EXPECT_FALSE(made.leavesRunningOut);
    EXPECT_EQ(wear::seasonOf(historyOf(log, HistoryBuilder::dayOf(2))).season.now, 2.25);
}

TEST(ExposureTest, RunningCountsForASpringOnlyWhileItWasFitted) {
    HistoryBuilder builder = lapped();
    builder.spring(exhaust(2), "Old", {{0, "121.5"}, {2, "121.0"}})
        .spring(exhaust(2), "New", {{2, "125.0"}, {4, "124.5"}})
        .running(2, 0, {}, 250)  // before that day's swap
        .running(2, 3, {}, 500); // after it
    const wear::SeasonOfHistory made = wear::seasonOf(builder.build());
    ASSERT_EQ(made.season.lives.size(), 3U);
    EXPECT_EQ(exposuresOf(made, 1), (std::vector<double>{0, 2.25})) << "the old one";
    EXPECT_EQ(made.season.lives[1].xNow, 2.25);
    EXPECT_EQ(exposuresOf(made, 2), (std::vector<double>{0, 2.5})) << "the new one";
    EXPECT_EQ(made.season.lives[2].xExhaustNow, 2.5);
    EXPECT_EQ(made.season.lives[2].installed, 2.25);
}

TEST(ExposureTest, RunningInLapsNeedsARaceToCompareItWith) {
    HistoryBuilder builder;
    builder.spring(intake(1), "S-1", {{0, "121.5"}, {2, "121.0"}}).running(0, 1, 60);
    const wear::SeasonOfHistory made = wear::seasonOf(builder.build());
    EXPECT_EQ(exposuresOf(made), (std::vector<double>{0, 2}));
    EXPECT_TRUE(made.leavesRunningOut);
}

TEST(SeasonBuilderTest, TheUsersSayGoesWithTheCell) {
    HistoryBuilder builder;
    builder
        .spring(
            intake(1), "S-1",
            {{0, "121.5"}, {1, "121.0"}, {2, "112.0"}, {2, "120.5"}, {3, "120.0"}, {4, "119.5"}})
        .decide("S-1", 0, ReadingJudgement::DropConfirmed)
        .decide("S-1", 1, ReadingJudgement::SetAside)
        .decide("S-1", 2, ReadingJudgement::Kept)
        .decide("S-1", 3, ReadingJudgement::DropDenied)
        .decide("S-1", 4, ReadingJudgement::SetAside)
        .decide("S-1", 4, ReadingJudgement::DropConfirmed);
    const wear::SeasonOfHistory made = wear::seasonOf(builder.build());
    std::vector<wear::Say> says;
    for (const wear::Cell& cell : made.season.lives[0].cells) {
        says.push_back(cell.say);
    }
    using wear::Say;
    EXPECT_EQ(says, (std::vector<Say>{Say::Kept, Say::Misread, Say::Kept, Say::Misread, Say::Drop}))
        << "nothing dropped before the baseline; the newest say is in force";
    EXPECT_TRUE(made.screened.empty()) << "hits that are kept are not screened";
    const std::vector<wear::Event> events = wear::eventsSaid(made.season);
    ASSERT_EQ(events.size(), 3U);
    EXPECT_EQ(events[2].cell, 4U);
    EXPECT_EQ(events[2].kind, wear::Event::Kind::Drop);
    EXPECT_TRUE(events[2].byUser && !events[2].pending);
}

TEST(SeasonBuilderTest, ALevelChangeCountsFromTheFirstInspectionAfterIt) {
    HistoryBuilder builder;
    builder.spring(intake(1), "S-1", {{0, "121.5"}, {1, "121.0"}, {1, "128.0", 2}, {2, "127.5"}})
        .levelChange("S-1", 1, 0)
        .levelChange("S-1", 1, 1, LevelChangeKind::Retainer);
    const auto steps = wear::seasonOf(builder.build()).season.lives[0].levelChanges;
    ASSERT_EQ(steps.size(), 1U) << "two before one reading are one step";
    EXPECT_EQ(steps[0].fromCell, 2U);
    HistoryBuilder before;
    before.spring(intake(1), "S-1", {{1, "121.5"}, {2, "121.0"}})
        .levelChange("S-1", 0, 0)
        .levelChange("S-1", 2, 0);
    EXPECT_TRUE(wear::seasonOf(before.build()).season.lives[0].levelChanges.empty())
        << "before the baseline, and not read since";
}

TEST(SeasonBuilderTest, SpringsRunInHaveNoBreakIn) {
    HistoryBuilder builder = lapped();
    EXPECT_FALSE(wear::seasonOf(builder.build()).season.runIn);
    HistoryBuilder runIn = lapped();
    EXPECT_TRUE(wear::seasonOf(runIn.runIn().build()).season.runIn);
}

} // namespace
} // namespace coilbook
