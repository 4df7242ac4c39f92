#include "core/assessment/assessment.h"
#include "core/assessment/swap_plan.h"
#include "tests/support/wearing_set.h"

#include <gtest/gtest.h>

#include <numeric>

namespace coilbook {
namespace {

std::vector<PlannedRace> calendar(std::size_t races, std::optional<int> laps = {}) {
    std::vector<PlannedRace> coming;
    for (std::size_t r = 0; r < races; ++r) {
        PlannedRace race;
        race.id = PlannedRaceId::make();
        race.plannedOn = QDate(2027, 1, 1).addDays(static_cast<int>(14 * r));
        race.laps = laps;
        coming.push_back(race);
    }
    return coming;
}

const EngineHistory& worn() {
    static const EngineHistory history = testing::wearingSet(8, 0.45).build();
    return history;
}

TEST(SwapPlanTest, OddsNeverFallAndAreThoseOfTheAssessment) {
    const SwapPlan plan = swapPlanOf(worn(), {}, calendar(3));
    const Assessment assessment = assess(worn(), {});
    ASSERT_EQ(plan.springs.size(), 16U);
    ASSERT_EQ(plan.races.size(), 3U);
    for (std::size_t s = 0; s < plan.springs.size(); ++s) {
        const PlannedSwap& spring = plan.springs[s];
        ASSERT_EQ(spring.pastBy.size(), 3U);
        EXPECT_LE(*spring.pastNow, spring.pastBy[0]);
        EXPECT_LE(spring.pastBy[0], spring.pastBy[1]);
        EXPECT_LE(spring.pastBy[1], spring.pastBy[2]);
        // p_due of the contract, three races ahead.
        EXPECT_NEAR(spring.pastBy[2], *assessment.springs[s].pDue, 1e-6);
    }
}

TEST(SwapPlanTest, ASpringIsChangedBeforeTheFirstRaceThatItIsTooLikelyToFailIn) {
    const PlanQuestion question{0.10, 0.90};
    const SwapPlan plan = swapPlanOf(worn(), {}, calendar(12), question);
    for (const PlannedSwap& spring : plan.springs) {
        ASSERT_TRUE(spring.changeBefore.has_value()) << "all are past the limit by then";
        const std::size_t before = *spring.changeBefore;
        if (spring.standing != Standing::PastLimit) {
            EXPECT_GT(spring.pastBy[before], 0.10);
        }
        if (before > 0) {
            EXPECT_LE(spring.pastBy[before - 1], 0.10);
        }
    }
}

TEST(SwapPlanTest, TheCountIsADistributionWhoseMeanIsTheSumOfTheOdds) {
    const SwapPlan plan = swapPlanOf(worn(), {}, calendar(4));
    for (std::size_t r = 0; r < plan.races.size(); ++r) {
        const PlannedRaceOutlook& race = plan.races[r];
        ASSERT_EQ(race.due.size(), 17U);
        EXPECT_NEAR(std::accumulate(race.due.begin(), race.due.end(), 0.0), 1.0, 1e-6);
        double sum = 0.0;
        for (const PlannedSwap& spring : plan.springs) {
            sum += spring.pastBy[r];
        }
        EXPECT_NEAR(race.expectedDue, sum, 0.02) << "the odds never fall, the count may";
        EXPECT_GE(race.enough, static_cast<int>(race.expectedDue));
        EXPECT_LT(race.expectedDueNew, race.expectedDue) << "a new set is no worse";
    }
}

TEST(SwapPlanTest, SurerAsksForMoreSparesAndMoreRiskForLaterChanges) {
    const SwapPlan usual = swapPlanOf(worn(), {}, calendar(3), {0.10, 0.80});
    const SwapPlan sure = swapPlanOf(worn(), {}, calendar(3), {0.30, 0.99});
    EXPECT_GE(sure.races.back().enough, usual.races.back().enough);
    for (std::size_t s = 0; s < usual.springs.size(); ++s) {
        EXPECT_GE(sure.springs[s].changeBefore.value_or(3),
                  usual.springs[s].changeBefore.value_or(3));
    }
}

TEST(SwapPlanTest, LapsOfPlannedRacesCountWhereTheWearGoesByLaps) {
    testing::HistoryBuilder builder = testing::wearingSet(6, 0.3);
    for (int race = 1; race <= 6; ++race) {
        builder.race(race, {}, 40);
    }
    builder.byLaps();
    const EngineHistory history = builder.build();
    const SwapPlan doubled = swapPlanOf(history, {}, calendar(1, 80));
    ASSERT_EQ(doubled.races.size(), 1U);
    EXPECT_TRUE(doubled.races[0].lapsCount);
    EXPECT_NEAR(doubled.races[0].racesAhead, 2.0, 1e-12);
    const SwapPlan two = swapPlanOf(history, {}, calendar(2, 40));
    for (std::size_t s = 0; s < two.springs.size(); ++s) {
        EXPECT_NEAR(doubled.springs[s].pastBy[0], two.springs[s].pastBy[1], 1e-9);
    }
    EXPECT_NEAR(swapPlanOf(history, {}, calendar(1)).races[0].racesAhead, 1.0, 1e-12)
        << "a race without laps is a mean one";
}

TEST(SwapPlanTest, WithoutTrendsOnlyTheRuleOfRecordSpeaks) {
    const EngineHistory baselines = testing::wearingSet(0, 0.0).build();
    const SwapPlan plan = swapPlanOf(baselines, {}, calendar(2));
    EXPECT_FALSE(plan.hasEstimates);
    for (const PlannedSwap& spring : plan.springs) {
        EXPECT_TRUE(spring.pastBy.empty());
        EXPECT_FALSE(spring.changeBefore.has_value());
    }
    EXPECT_TRUE(plan.races.front().due.empty());
}

TEST(SwapPlanTest, LooksAtTwelveRacesAndSaysHowManyItLeavesOut) {
    const SwapPlan plan = swapPlanOf(worn(), {}, calendar(15));
    EXPECT_EQ(plan.races.size(), kMostPlanned);
    EXPECT_EQ(plan.racesLeftOut, 3U);
}

} // namespace
} // namespace coilbook
