#include "core/assessment/odds_ahead.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

OddsAhead rampTo(double last) {
    OddsAhead odds{};
    for (std::size_t h = 0; h < odds.size(); ++h) {
        odds[h] = last * static_cast<double>(h) / static_cast<double>(odds.size() - 1);
    }
    return odds;
}

TEST(OddsAheadTest, DueIsTheLargestOfTheOddsOnTheWay) {
    OddsAhead odds{};
    odds[1] = 0.7;
    odds[2] = 0.4;
    EXPECT_EQ(oddsDueWithin(odds, 0), 0.0);
    EXPECT_EQ(oddsDueWithin(odds, 1), 0.7);
    EXPECT_EQ(oddsDueWithin(odds, 2), 0.7);
    EXPECT_EQ(runningMaximum(odds)[60], 0.7);
}

TEST(OddsAheadTest, RacesAheadOutsideTheRangeAreTakenAsTheNearerEnd) {
    const OddsAhead odds = rampTo(0.6);
    EXPECT_EQ(oddsDueWithin(odds, -5), 0.0);
    EXPECT_EQ(oddsDueWithin(odds, 1000), 0.6);
}

TEST(OddsAheadTest, RacesLeftAreTheFirstThatReachTheOdds) {
    const RacesLeft left = racesLeftBy(rampTo(1.0)); // 1/60 a race
    EXPECT_EQ(left.p10, 6);
    EXPECT_EQ(left.median, 30);
    EXPECT_EQ(left.p90, 54);
}

TEST(OddsAheadTest, OddsOnceReachedStayReached) {
    OddsAhead odds{};
    odds[4] = 0.55;
    const RacesLeft left = racesLeftBy(odds);
    EXPECT_EQ(left.p10, 4);
    EXPECT_EQ(left.median, 4);
    EXPECT_FALSE(left.p90.has_value());
}

TEST(OddsAheadTest, WhatIsNotReachedWithinSixtyRacesIsEmpty) {
    EXPECT_EQ(racesLeftBy(OddsAhead{}), RacesLeft{});
    OddsAhead certain{};
    certain.fill(1.0);
    EXPECT_EQ(racesLeftBy(certain), (RacesLeft{0, 0, 0}));
}

} // namespace
} // namespace coilbook
