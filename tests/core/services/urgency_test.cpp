#include "core/services/urgency.h"
#include "tests/support/log_builder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;

SpringAssessment spring(const Place& place, Standing standing, double pDue, double loss,
                        bool offTrend = false) {
    SpringAssessment result;
    result.place = place;
    result.standing = standing;
    result.pDue = pDue;
    result.measuredLoss = Force::poundsForce(loss);
    result.offTrend = offTrend;
    return result;
}

TEST(UrgencyTest, PutsThePastAndTheDueBeforeTheSoundAndTheUnknown) {
    Assessment assessment;
    assessment.springs = {spring(intake(1), Standing::NoTrend, 0.0, 0.0),
                          spring(exhaust(1), Standing::Sound, 0.1, 1.0),
                          spring(intake(2), Standing::Due, 0.6, 4.0),
                          spring(exhaust(2), Standing::PastLimit, 1.0, 5.5)};
    EXPECT_THAT(byUrgency(assessment), ::testing::ElementsAre(3, 2, 1, 0));
}

TEST(UrgencyTest, WithinAStandingPutsTheOffTrendAndTheWorseFirst) {
    Assessment assessment;
    assessment.springs = {spring(intake(1), Standing::Sound, 0.1, 1.0),
                          spring(exhaust(1), Standing::Sound, 0.2, 0.5),
                          spring(intake(2), Standing::Sound, 0.1, 2.0),
                          spring(exhaust(2), Standing::Sound, 0.0, 0.0, true)};
    EXPECT_THAT(byUrgency(assessment), ::testing::ElementsAre(3, 1, 2, 0));
}

TEST(UrgencyTest, KeepsTheOrderOfPlacesAmongEquals) {
    Assessment assessment;
    assessment.springs = {spring(exhaust(2), Standing::NoTrend, 0.0, 0.0),
                          spring(intake(1), Standing::NoTrend, 0.0, 0.0)};
    EXPECT_THAT(byUrgency(assessment), ::testing::ElementsAre(1, 0));
}

TEST(UrgencyTest, CountsEachStanding) {
    Assessment assessment;
    assessment.springs = {spring(intake(1), Standing::Sound, 0.1, 1.0),
                          spring(exhaust(1), Standing::Sound, 0.2, 0.5),
                          spring(intake(2), Standing::PastLimit, 1.0, 6.0)};
    EXPECT_EQ(standingCounts(assessment), (StandingCounts{1, 0, 2, 0}));
}

} // namespace
} // namespace coilbook
