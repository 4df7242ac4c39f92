#include "core/units/force.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

// NIST SP 811 (2008), appendix B.8: 1 lbf = 4.448222 N to seven digits; exact from
// 0.45359237 kg (pound) and 9.80665 m/s² (standard gravity), both defined.
TEST(ForceTest, OnePoundForceIsTheExactNumberOfNewtons) {
    EXPECT_DOUBLE_EQ(Force::poundsForce(1.0).inNewtons(), 0.45359237 * 9.80665);
    EXPECT_NEAR(Force::poundsForce(1.0).inNewtons(), 4.448222, 5e-7);
}

TEST(ForceTest, ConvertsThereAndBack) {
    EXPECT_NEAR(Force::newtons(4448.2216152605).inPoundsForce(), 1000.0, 1e-12);
}

TEST(ForceTest, ALossOfExactlyTheLimitReachesItDespiteBinaryRounding) {
    const Force loss = Force::poundsForce(120.1) - Force::poundsForce(115.1);
    EXPECT_TRUE(reaches(loss, Force::poundsForce(5.0)));
    EXPECT_FALSE(reaches(Force::poundsForce(4.999999), Force::poundsForce(5.0)));
}

} // namespace
} // namespace coilbook
