#include "core/mechanics/seat_height.h"

#include <gtest/gtest.h>

namespace coilbook::mechanics {
namespace {

SeatFacts allKnown() {
    SeatFacts facts;
    facts.seatPressure = Force::poundsForce(110.0);
    facts.installed = Length::inches(1.870);
    facts.nominal = Length::inches(1.850);
    facts.rate = SpringRate::poundsForcePerInch(350.0);
    facts.lift = Length::inches(0.500);
    facts.coilBind = Length::inches(1.200);
    return facts;
}

TEST(SeatHeightTest, ASunkSeatIsNotTakenForATiredSpring) {
    // 0.020 in more room at 350 lbf/in takes 7 lbf off the reading and none off the spring.
    EXPECT_NEAR(pressureAtNominal(allKnown()).value->inPoundsForce(), 117.0, 1e-9);
}

TEST(SeatHeightTest, OpenPressureIsTheSeatPressureAndTheRateTimesTheLift) {
    EXPECT_NEAR(openPressure(allKnown()).value->inPoundsForce(), 285.0, 1e-9);
}

TEST(SeatHeightTest, ClearanceIsWhatHeightLeavesOverLiftAndCoilBind) {
    EXPECT_NEAR(coilBindClearance(allKnown()).value->inInches(), 0.170, 1e-9);
}

TEST(SeatHeightTest, NothingIsComputedFromMissingFactsAndEachIsNamed) {
    SeatFacts facts = allKnown();
    facts.rate.reset();
    facts.nominal.reset();
    const Figure<Force> corrected = pressureAtNominal(facts);
    EXPECT_FALSE(corrected.value);
    EXPECT_EQ(corrected.missing, (std::vector{SeatFact::NominalHeight, SeatFact::Rate}));
    EXPECT_FALSE(openPressure(facts).value);
    EXPECT_TRUE(coilBindClearance(facts).value);
    EXPECT_EQ(coilBindClearance({}).missing,
              (std::vector{SeatFact::InstalledHeight, SeatFact::Lift, SeatFact::CoilBindHeight}));
}

TEST(SeatHeightTest, FactsThatCannotBeAreNamed) {
    EXPECT_FALSE(seatFault(allKnown()));
    EXPECT_FALSE(seatFault({}));
    SeatFacts facts = allKnown();
    facts.rate = SpringRate::poundsForcePerInch(-350.0);
    EXPECT_EQ(seatFault(facts), SeatFault::RateNotPositive);
    facts.rate = SpringRate();
    EXPECT_EQ(seatFault(facts), SeatFault::RateNotPositive);
    facts = allKnown();
    facts.coilBind = Length::inches(1.900);
    EXPECT_EQ(seatFault(facts), SeatFault::CoilBindAboveInstalled);
    facts = allKnown();
    facts.lift = Length::inches(0.671);
    EXPECT_EQ(seatFault(facts), SeatFault::LiftBeyondCoilBind);
    facts = allKnown();
    facts.installed = Length();
    EXPECT_EQ(seatFault(facts), SeatFault::LengthNotPositive);
}

TEST(SeatHeightTest, LiftUpToCoilBindItselfIsNoFault) {
    SeatFacts facts = allKnown();
    facts.nominal.reset();
    facts.installed = Length::inches(1.7);
    facts.lift = Length::inches(0.5);
    facts.coilBind = Length::inches(1.2);
    EXPECT_FALSE(seatFault(facts));
}

} // namespace
} // namespace coilbook::mechanics
