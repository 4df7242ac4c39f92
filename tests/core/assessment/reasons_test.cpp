#include "core/assessment/assessment.h"
#include "tests/support/history_builder.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::HistoryBuilder;
using Counts = std::vector<std::optional<int>>;

const Reason* find(const SpringAssessment& spring, ReasonKind kind) {
    const auto found = std::find_if(spring.reasons.begin(), spring.reasons.end(),
                                    [&](const Reason& reason) { return reason.kind == kind; });
    return found == spring.reasons.end() ? nullptr : &*found;
}

Counts overRevOf(const EngineHistory& history) {
    const SpringAssessment spring = assess(history, {}).springs.at(0);
    const Reason* reason = find(spring, ReasonKind::OverRev);
    return reason == nullptr ? Counts{} : reason->counts;
}

HistoryBuilder threeRaces(int overRevved) {
    HistoryBuilder builder;
    builder.rpmCeiling(9000).spring(exhaust(3), "S-27", {{0, "120"}, {1, "119.5"}, {2, "119.4"}});
    for (int race = 1; race <= 3; ++race) {
        builder.race(race, race == overRevved ? 9400 : 8800);
    }
    return builder;
}

TEST(ReasonsTest, AnOverRevSinceTheLastReadingAsksForATest) {
    EXPECT_EQ(overRevOf(threeRaces(3).build()), (Counts{3, 0}));
}

TEST(ReasonsTest, AnOverRevBeforeTheNewestReadingIsTold) {
    EXPECT_EQ(overRevOf(threeRaces(2).build()), (Counts{2, 1}));
}

TEST(ReasonsTest, AnOverRevThatWasReadTwiceSinceIsNoNewsAnyMore) {
    EXPECT_EQ(overRevOf(threeRaces(1).build()), Counts{});
}

TEST(ReasonsTest, AnOverRevBeforeTheSpringWasFittedIsNotItsOwn) {
    HistoryBuilder builder = threeRaces(2);
    builder.spring(exhaust(3), "S-40", {{2, "121"}, {3, "120.8"}});
    EXPECT_EQ(overRevOf(builder.build()), Counts{});
}

// Before any reading the step is its prior, 0.9 lbf with an SD of 0.5 (specification, section 2):
// 90 % of it lie within 0.9 ± 1.645 · 0.5.
TEST(ReasonsTest, AnOverRevTellsWhatItCost) {
    const EngineHistory history = threeRaces(3).build();
    const SpringAssessment untested = assess(history, {}).springs.front();
    const Reason* unread = find(untested, ReasonKind::OverRev);
    ASSERT_NE(unread, nullptr);
    ASSERT_EQ(unread->forces.size(), 3U);
    EXPECT_NEAR(unread->forces[0].inPoundsForce(), 0.9, 1e-9);
    EXPECT_NEAR(unread->forces[1].inPoundsForce(), 0.9 - 1.6449 * 0.5, 1e-3);
    EXPECT_NEAR(unread->forces[2].inPoundsForce(), 0.9 + 1.6449 * 0.5, 1e-3);
    const EngineHistory read = threeRaces(1).build();
    const SpringAssessment tested = assess(read, {}).springs.front();
    const Reason* earlier = find(tested, ReasonKind::OverRevCost);
    ASSERT_NE(earlier, nullptr);
    ASSERT_EQ(earlier->forces.size(), 3U);
    EXPECT_LT(earlier->forces[1], earlier->forces[0]);
    EXPECT_GT(earlier->forces[2], earlier->forces[0]);
}

TEST(ReasonsTest, ASpringThatHoldsItsPressureDoesNotReachTheLimit) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        std::vector<testing::At> readings;
        for (int races = 0; races <= 25; ++races) {
            readings.push_back({races, (cylinder + races) % 2 == 0 ? "120.0" : "120.1"});
        }
        builder.spring(exhaust(cylinder), QByteArray::number(cylinder).constData(), readings);
    }
    for (const SpringAssessment& spring : assess(builder.build(), {}).springs) {
        EXPECT_NE(find(spring, ReasonKind::NotWithinHorizon), nullptr);
        EXPECT_EQ(find(spring, ReasonKind::ReachesLimit), nullptr);
    }
}

// One low reading puts the spring past the limit by itself: that the estimate, which follows it as
// a pending drop, is past the limit too is no second witness.
TEST(ReasonsTest, AnEstimateThatFollowsAReadingOffItsTrendDoesNotBearItOut) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        builder.spring(exhaust(cylinder), QByteArray::number(cylinder).constData(),
                       {{0, "120.0"},
                        {1, "119.5"},
                        {2, "119.5"},
                        {3, "119.0"},
                        {4, "119.0"},
                        {5, cylinder == 8 ? "111.5" : "118.5"}});
    }
    const SpringAssessment spring = assess(builder.build(), {}).springs.at(7);
    ASSERT_EQ(spring.pastBy, PastBy::Both);
    ASSERT_TRUE(spring.offTrend);
    EXPECT_NE(find(spring, ReasonKind::PendingDrop), nullptr);
    EXPECT_NE(find(spring, ReasonKind::PastByMeasurement), nullptr);
    EXPECT_EQ(find(spring, ReasonKind::PastByEstimate), nullptr);
}

TEST(ReasonsTest, EverySpringHasAReasonAndTheFirstTellsItsLoss) {
    const SpringAssessment spring = assess(threeRaces(1).build(), {}).springs.at(0);
    ASSERT_FALSE(spring.reasons.empty());
    EXPECT_EQ(spring.reasons.front().kind, ReasonKind::LossAndRate);
    EXPECT_EQ(spring.reasons.front().counts, (Counts{3}));
}

} // namespace
} // namespace coilbook
