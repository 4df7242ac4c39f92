#include "core/mechanics/shims.h"

#include <gtest/gtest.h>

namespace coilbook::mechanics {
namespace {

SeatFacts facts() {
    SeatFacts known;
    known.seatPressure = Force::poundsForce(110.0);
    known.installed = Length::inches(1.870);
    known.rate = SpringRate::poundsForcePerInch(350.0);
    known.lift = Length::inches(0.500);
    known.coilBind = Length::inches(1.200);
    return known;
}

// Thicknesses and the clearance of 0.060 in: common practice, no source.
TEST(ShimsTest, TheStackThatComesClosestIsProposedWithWhatItLeaves) {
    // 20 lbf at 350 lbf/in are 0.0571 in: one shim of 0.060 in.
    const ShimAnswer answer =
        proposeShims(facts(), Force::poundsForce(130.0), usualShims(), kUsualCoilBindClearance);
    ASSERT_TRUE(answer.proposal);
    EXPECT_EQ(answer.proposal->stack, (std::vector{Length::inches(0.060)}));
    EXPECT_NEAR(answer.proposal->seatPressure.inPoundsForce(), 131.0, 1e-9);
    EXPECT_NEAR(answer.proposal->openPressure.inPoundsForce(), 306.0, 1e-9);
    EXPECT_NEAR(answer.proposal->clearance.inInches(), 0.110, 1e-9);
    EXPECT_NEAR(answer.needed->inInches(), 20.0 / 350.0, 1e-9);
}

TEST(ShimsTest, ShimsAreStackedWhereOneIsNotEnoughAndFewerGoFirst) {
    // 0.045 in: 0.030 and 0.015, not three of 0.015.
    const ShimAnswer answer = proposeShims(facts(), Force::poundsForce(110.0 + 350.0 * 0.045),
                                           usualShims(), kUsualCoilBindClearance);
    ASSERT_TRUE(answer.proposal);
    EXPECT_EQ(answer.proposal->stack, (std::vector{Length::inches(0.030), Length::inches(0.015)}));
}

TEST(ShimsTest, AListThatCannotSolveItSaysSo) {
    const std::vector<Length> onlyThin{Length::inches(0.005)};
    const ShimAnswer answer =
        proposeShims(facts(), Force::poundsForce(130.0), onlyThin, kUsualCoilBindClearance);
    EXPECT_FALSE(answer.proposal);
    EXPECT_EQ(answer.why, NoShim::NoStackFits);
    EXPECT_EQ(proposeShims(facts(), Force::poundsForce(130.0), {}, kUsualCoilBindClearance).why,
              NoShim::NoShims);
}

TEST(ShimsTest, NoStackIsProposedThatTakesTheClearance) {
    SeatFacts tight = facts();
    tight.lift = Length::inches(0.600); // 0.070 in left, 0.060 in to keep
    const ShimAnswer answer =
        proposeShims(tight, Force::poundsForce(130.0), usualShims(), kUsualCoilBindClearance);
    EXPECT_FALSE(answer.proposal);
    EXPECT_EQ(answer.why, NoShim::ClearanceTooSmall);
}

TEST(ShimsTest, AStackThatLeavesExactlyTheClearanceIsAllowed) {
    SeatFacts tight = facts();
    tight.lift = Length::inches(0.550); // 0.120 in left
    EXPECT_TRUE(
        proposeShims(tight, Force::poundsForce(131.0), usualShims(), kUsualCoilBindClearance)
            .proposal);
}

TEST(ShimsTest, APressureThatIsThereNeedsNoShim) {
    EXPECT_EQ(
        proposeShims(facts(), Force::poundsForce(112.0), usualShims(), kUsualCoilBindClearance).why,
        NoShim::NothingToBringBack);
}

TEST(ShimsTest, MissingFactsAreNamedOnce) {
    SeatFacts known = facts();
    known.lift.reset();
    known.rate.reset();
    const ShimAnswer answer =
        proposeShims(known, Force::poundsForce(130.0), usualShims(), kUsualCoilBindClearance);
    EXPECT_EQ(answer.why, NoShim::FactsMissing);
    EXPECT_EQ(answer.missing, (std::vector{SeatFact::Rate, SeatFact::Lift}));
}

} // namespace
} // namespace coilbook::mechanics
