#include "core/mechanics/valve_float.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook::mechanics {
namespace {

const FloatFigure kBuilder{7200.0, Force::poundsForce(300.0)};

// Newton's second law, no source: force goes with the square of the speed.
TEST(ValveFloatTest, SpeedGoesWithTheRootOfTheForce) {
    EXPECT_NEAR(*floatSpeed(kBuilder, Force::poundsForce(300.0)), 7200.0, 1e-9);
    EXPECT_NEAR(*floatSpeed(kBuilder, Force::poundsForce(75.0)), 3600.0, 1e-9);
    EXPECT_NEAR(*floatSpeed(kBuilder, Force::poundsForce(270.0)), 7200.0 * std::sqrt(0.9), 1e-9);
}

TEST(ValveFloatTest, BoundsOfTheLossBecomeBoundsOfTheSpeed) {
    const LossInterval loss{Force::poundsForce(10.0), Force::poundsForce(8.0),
                            Force::poundsForce(13.0)};
    const std::optional<FloatEstimate> estimate = floatEstimate(kBuilder, loss, Force());
    ASSERT_TRUE(estimate);
    EXPECT_NEAR(estimate->rpm, *floatSpeed(kBuilder, Force::poundsForce(290.0)), 1e-9);
    EXPECT_NEAR(estimate->low90, *floatSpeed(kBuilder, Force::poundsForce(287.0)), 1e-9);
    EXPECT_NEAR(estimate->high90, *floatSpeed(kBuilder, Force::poundsForce(292.0)), 1e-9);
    EXPECT_LT(estimate->low90, estimate->rpm);
    EXPECT_LT(estimate->rpm, estimate->high90);
}

TEST(ValveFloatTest, ASunkSeatCostsSpeedThoughTheSpringLostNothing) {
    const std::optional<FloatEstimate> estimate =
        floatEstimate(kBuilder, {}, Force::poundsForce(7.0));
    ASSERT_TRUE(estimate);
    EXPECT_NEAR(estimate->rpm, *floatSpeed(kBuilder, Force::poundsForce(293.0)), 1e-9);
}

TEST(ValveFloatTest, WithoutAForceThereIsNoSpeed) {
    EXPECT_FALSE(floatSpeed(kBuilder, Force()));
    EXPECT_FALSE(floatSpeed({0.0, Force::poundsForce(300.0)}, Force::poundsForce(1.0)));
    EXPECT_FALSE(floatSpeed({7200.0, Force()}, Force::poundsForce(1.0)));
    EXPECT_FALSE(floatEstimate(kBuilder, {Force(), Force(), Force::poundsForce(300.0)}, Force()));
}

} // namespace
} // namespace coilbook::mechanics
