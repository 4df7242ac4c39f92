#include "core/wear/hit_noise.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace coilbook {
namespace {

using wear::HitGroup;

double graduationOf(const std::vector<const char*>& readings,
                    ForceUnit unit = ForceUnit::PoundForce) {
    std::vector<TypedForce> typed;
    for (const char* reading : readings) {
        typed.push_back(*TypedForce::parse(QString::fromUtf8(reading), unit));
    }
    return wear::graduationOf(typed);
}

// Specification, section 1: the largest step of which all readings are multiples.
TEST(GraduationTest, IsTheCoarsestStepThatAllReadingsAreMultiplesOf) {
    EXPECT_DOUBLE_EQ(graduationOf({"120", "130", "110"}), 10.0);
    EXPECT_DOUBLE_EQ(graduationOf({"120", "125"}), 5.0);
    EXPECT_DOUBLE_EQ(graduationOf({"120", "122", "118"}), 2.0);
    EXPECT_DOUBLE_EQ(graduationOf({"120", "121.5"}), 0.5);
    EXPECT_DOUBLE_EQ(graduationOf({"120.25", "121.5"}), 0.25);
    EXPECT_DOUBLE_EQ(graduationOf({"120.2", "121.4"}), 0.2);
    EXPECT_DOUBLE_EQ(graduationOf({"120.3", "121.4"}), 0.1);
    EXPECT_DOUBLE_EQ(graduationOf({"120.37", "121.4"}), 0.01);
    EXPECT_DOUBLE_EQ(graduationOf({}), 0.0);
}

// 1 lbf = 4.4482216152605 N exactly (from the definitions of pound and standard gravity).
TEST(GraduationTest, IsJudgedInTheUnitThatWasRead) {
    EXPECT_DOUBLE_EQ(graduationOf({"530", "535"}, ForceUnit::Newton), 5.0 / 4.4482216152605);
}

/// Covariance of the rounding errors of two readings over q²/12, by Simpson's rule: over a uniform
/// true value it is 1 - 6 f (1 - f) with f the fraction of |difference|/q, and the difference of
/// two values with SD s each is normal with SD s √2.
double roundingByIntegral(double s, double q) {
    constexpr int kSteps = 200'000;
    const double sd = s * std::numbers::sqrt2;
    const double end = 9.0 * sd;
    double sum = 0.0;
    for (int i = 0; i <= kSteps; ++i) {
        const double d = end * i / kSteps;
        const double f = d / q - std::floor(d / q);
        const double density =
            2.0 * std::exp(-0.5 * d * d / (sd * sd)) / (sd * std::sqrt(2.0 * std::numbers::pi));
        const double weight = i == 0 || i == kSteps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
        sum += weight * density * (1.0 - 6.0 * f * (1.0 - f));
    }
    return sum * end / kSteps / 3.0;
}

TEST(HitNoiseTest, CorrelationOfRoundingFollowsFromItsDefinition) {
    for (const double ratio : {0.15, 0.2, 0.3, 0.5, 1.0}) {
        EXPECT_NEAR(wear::roundingCorrelation(ratio * 2.0, 2.0),
                    roundingByIntegral(ratio * 2.0, 2.0), 1e-6)
            << ratio;
    }
    EXPECT_EQ(wear::roundingCorrelation(1.0, 0.0), 0.0);
}

std::vector<HitGroup> pairs(int count, double apart) {
    std::vector<HitGroup> groups;
    for (int i = 0; i < count; ++i) {
        groups.push_back({static_cast<std::size_t>(i), 0, 0, {120.0, 120.0 + apart}});
    }
    return groups;
}

TEST(HitNoiseTest, FewRepeatedHitsGetNoCredit) {
    const wear::HitNoise noise = wear::hitNoiseOf(pairs(15, 1.0), 0, 1.0);
    EXPECT_EQ(noise.degreesOfFreedom, 15);
    EXPECT_EQ(noise.withinVariance, 0.0);
    EXPECT_DOUBLE_EQ(noise.fixedVariance(2), 1.0 / 12.0);
}

// Two hits 2 apart have the sum of squares 2, and as many degrees of freedom as pairs.
TEST(HitNoiseTest, EnoughRepeatedHitsTellTheRepeatability) {
    const wear::HitNoise noise = wear::hitNoiseOf(pairs(16, 2.0), 0, 0.5);
    EXPECT_EQ(noise.degreesOfFreedom, 16);
    EXPECT_DOUBLE_EQ(noise.withinVariance, 2.0);
    EXPECT_NEAR(noise.fixedVariance(2), 1.0, 1e-9) << "rounding is independent at that spread";
    EXPECT_DOUBLE_EQ(wear::hitNoiseOf(pairs(20, 0.0), 0, 1.0).withinVariance, 0.02)
        << "hits that never differ are no proof of a perfect tester";
}

TEST(HitNoiseTest, TestersAreKeptApart) {
    std::vector<HitGroup> groups = pairs(16, 2.0);
    for (HitGroup group : pairs(16, 1.0)) {
        group.tester = 1;
        groups.push_back(group);
    }
    EXPECT_DOUBLE_EQ(wear::hitNoiseOf(groups, 0, 0.5).withinVariance, 2.0);
    EXPECT_DOUBLE_EQ(wear::hitNoiseOf(groups, 1, 0.5).withinVariance, 0.5);
}

} // namespace
} // namespace coilbook
