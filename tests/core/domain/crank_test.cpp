#include "core/domain/crank.h"
#include "core/domain/layout_schemes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <set>

namespace coilbook {
namespace {

constexpr double kCycle = 720.0;

/// The turns from step to step of a whole round in firing order, the way back to its begin last.
std::vector<double> stepsOf(const EngineLayout& layout) {
    std::vector<double> steps;
    for (std::size_t i = 0; i < layout.firingOrder.size(); ++i) {
        steps.push_back(turnBetween(layout, layout.firingOrder[i],
                                    layout.firingOrder[(i + 1) % layout.firingOrder.size()]));
    }
    return steps;
}

/// Any number of cylinders in one row, firing in any order.
EngineLayout drawnLayout(std::mt19937_64& random) {
    EngineLayout layout;
    layout.banks.resize(1);
    const int cylinders = std::uniform_int_distribution(1, Cylinder::kMost)(random);
    for (int number = 1; number <= cylinders; ++number) {
        layout.firingOrder.emplace_back(number);
        layout.banks[0].places.push_back({Cylinder(number), Valve::Intake});
        layout.banks[0].places.push_back({Cylinder(number), Valve::Exhaust});
    }
    std::shuffle(layout.firingOrder.begin(), layout.firingOrder.end(), random);
    return layout;
}

void makeOddFire(EngineLayout& layout, std::mt19937_64& random) {
    std::vector<int> cuts{0, kCycleTenths};
    for (std::size_t i = 1; i < layout.firingOrder.size(); ++i) {
        cuts.push_back(std::uniform_int_distribution(0, kCycleTenths)(random));
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        layout.firingIntervals.push_back(cuts[i + 1] - cuts[i]);
    }
}

// Arithmetic: two turns over eight even firings.
TEST(CrankTest, EachStepOfACrossPlaneV8Is90DegreesAndAllEightLieWithin720) {
    for (const LayoutScheme& scheme : v8Schemes()) {
        std::set<double> angles;
        for (const Cylinder& cylinder : scheme.layout.firingOrder) {
            const double angle = firingAngle(scheme.layout, cylinder);
            EXPECT_GE(angle, 0.0);
            EXPECT_LT(angle, kCycle);
            angles.insert(angle);
        }
        EXPECT_EQ(angles.size(), 8U);
        for (const double step : stepsOf(scheme.layout)) {
            EXPECT_EQ(step, 90.0);
        }
    }
}

// An outside check by geometry: in a V of 90° the two cylinders of one crankpin, one of each bank,
// reach top dead centre 90° apart, the same way round at all four pins; the pins of a cross-plane
// crank stand in four directions, those of a flat-plane crank in two opposite ones.
TEST(CrankTest, ACrankCanFireEachSchemeInA90DegreeV) {
    for (const LayoutScheme& scheme : v8Schemes()) {
        const EngineLayout& layout = scheme.layout;
        std::set<double> apart;
        std::set<double> pins;
        for (std::size_t row = 0; row < 4; ++row) {
            const Cylinder left = layout.banks[0].places[2 * row].cylinder;
            const Cylinder right = layout.banks[1].places[2 * row].cylinder;
            pins.insert(std::fmod(firingAngle(layout, left), 360.0));
            apart.insert(std::fmod(turnBetween(layout, left, right), 360.0));
        }
        ASSERT_EQ(apart.size(), 1U);
        EXPECT_TRUE(apart.contains(90.0) || apart.contains(270.0));
        EXPECT_EQ(pins.size(), scheme.crank == CrankKind::CrossPlane ? 4U : 2U);
    }
}

TEST(CrankTest, EverySchemeIsALayoutAndTheFirstIsTheDefault) {
    for (const LayoutScheme& scheme : v8Schemes()) {
        EXPECT_TRUE(checkedLayout(scheme.layout).has_value());
    }
    EXPECT_EQ(v8Schemes().front().layout, defaultLayout());
}

TEST(CrankTest, ADrawnRoundTurnsTheCrankTwiceAndComesBackWhereItBegan) {
    std::mt19937_64 random(11);
    for (int draw = 0; draw < 500; ++draw) {
        EngineLayout layout = drawnLayout(random);
        const auto cylinders = static_cast<double>(layout.cylinders());
        if (draw % 2 == 0) {
            makeOddFire(layout, random);
        }
        ASSERT_TRUE(checkedLayout(layout).has_value());
        const std::vector<double> steps = stepsOf(layout);
        const double turned = std::accumulate(steps.begin(), steps.end(), 0.0);
        if (layout.cylinders() > 1 &&
            std::count(layout.firingIntervals.begin(), layout.firingIntervals.end(), 0) == 0) {
            EXPECT_NEAR(turned, kCycle, 1e-9);
        }
        for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
            EXPECT_NEAR(steps[i],
                        layout.firingIntervals.empty() ? kCycle / cylinders
                                                       : layout.firingIntervals[i] / 10.0,
                        1e-9);
        }
        for (const Cylinder& from : layout.firingOrder) {
            for (const Cylinder& to : layout.firingOrder) {
                const double there = turnBetween(layout, from, to);
                const double back = turnBetween(layout, to, from);
                EXPECT_TRUE(there + back == 0.0 || std::abs(there + back - kCycle) < 1e-9);
            }
        }
    }
}

} // namespace
} // namespace coilbook
