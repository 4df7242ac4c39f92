#include "ui/widgets/engine_plan_layout.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

Place at(int cylinder, Valve valve) {
    return {Cylinder(cylinder), valve};
}

EngineLayout inlineFour() {
    EngineLayout engine;
    Bank bank{QStringLiteral("Head"), {}};
    for (const int number : {1, 2, 3, 4}) {
        bank.places.push_back(at(number, Valve::Intake));
        bank.places.push_back(at(number, Valve::Exhaust));
        engine.firingOrder.emplace_back(number);
    }
    engine.banks = {bank};
    return engine;
}

/// Two banks of unlike length, as on an odd-fire three-cylinder.
EngineLayout unevenBanks() {
    EngineLayout engine;
    engine.banks = {{QStringLiteral("Left"),
                     {at(1, Valve::Exhaust), at(1, Valve::Intake), at(3, Valve::Intake),
                      at(3, Valve::Exhaust)}},
                    {QStringLiteral("Right"), {at(2, Valve::Exhaust), at(2, Valve::Intake)}}};
    engine.firingOrder = {Cylinder(1), Cylinder(2), Cylinder(3)};
    return engine;
}

const QSizeF kSize(800.0, 640.0);

TEST(EnginePlanLayoutTest, GivesEverySpringOfTheEngineItsOwnArea) {
    const EngineLayout engine = defaultLayout();
    const EnginePlanLayout plan = layOutEnginePlan(engine, kSize, {});
    ASSERT_EQ(plan.spots.size(), 16U);
    for (const EnginePlanLayout::Spot& spot : plan.spots) {
        EXPECT_TRUE(QRectF(QPointF(), kSize).contains(spot.area));
        EXPECT_FALSE(spot.area.isEmpty());
        for (const EnginePlanLayout::Spot& other : plan.spots) {
            EXPECT_TRUE(spot.place == other.place || !spot.area.intersects(other.area));
        }
    }
    for (const Place& place : engine.places()) {
        EXPECT_EQ(plan.placeAt(plan.areaOf(place).center()), place);
    }
}

TEST(EnginePlanLayoutTest, PutsTheFrontAtTheTopAndTheBanksFromLeftToRight) {
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), kSize, {});
    EXPECT_LT(plan.areaOf(at(1, Valve::Exhaust)).top(), plan.areaOf(at(7, Valve::Exhaust)).top());
    EXPECT_LT(plan.areaOf(at(1, Valve::Exhaust)).top(), plan.areaOf(at(1, Valve::Intake)).top());
    EXPECT_LT(plan.areaOf(at(1, Valve::Exhaust)).right(),
              plan.areaOf(at(2, Valve::Exhaust)).left());
    ASSERT_EQ(plan.banks.size(), 2U);
    EXPECT_LT(plan.banks[0].area.left(), plan.banks[1].area.left());
    EXPECT_LE(plan.banks[0].area.bottom(), plan.areaOf(at(1, Valve::Exhaust)).top());
    EXPECT_NEAR(plan.front.center().x(), kSize.width() / 2.0, 1e-9);
}

TEST(EnginePlanLayoutTest, FramesTheTwoSpringsOfACylinderTogether) {
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), kSize, {});
    ASSERT_EQ(plan.cylinders.size(), 8U);
    const EnginePlanLayout::CylinderFrame& first = plan.cylinders.front();
    EXPECT_EQ(first.cylinder.number(), 1);
    EXPECT_EQ(first.area, plan.areaOf(at(1, Valve::Exhaust)) | plan.areaOf(at(1, Valve::Intake)));
}

TEST(EnginePlanLayoutTest, WalksAlongABankToItsEndAndNoFurther) {
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), kSize, {});
    Place here = at(1, Valve::Exhaust);
    EXPECT_EQ(plan.neighbour(here, PlanDirection::Front), std::nullopt);
    int steps = 0;
    while (const auto next = plan.neighbour(here, PlanDirection::Rear)) {
        here = *next;
        ++steps;
    }
    EXPECT_EQ(steps, 7);
    EXPECT_EQ(here, at(7, Valve::Exhaust));
}

TEST(EnginePlanLayoutTest, StepsAcrossToTheNearestSpringOfTheNextBank) {
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), kSize, {});
    EXPECT_EQ(plan.neighbour(at(3, Valve::Intake), PlanDirection::Right), at(4, Valve::Intake));
    EXPECT_EQ(plan.neighbour(at(4, Valve::Intake), PlanDirection::Left), at(3, Valve::Intake));
    EXPECT_EQ(plan.neighbour(at(4, Valve::Intake), PlanDirection::Right), std::nullopt);

    const EnginePlanLayout uneven = layOutEnginePlan(unevenBanks(), kSize, {});
    EXPECT_EQ(uneven.neighbour(at(3, Valve::Exhaust), PlanDirection::Right), at(2, Valve::Intake));
    EXPECT_EQ(uneven.neighbour(at(2, Valve::Intake), PlanDirection::Rear), std::nullopt);
}

TEST(EnginePlanLayoutTest, DrawsOneBankWithTheArrowBesideItsName) {
    const EnginePlanLayout plan = layOutEnginePlan(inlineFour(), kSize, {});
    EXPECT_EQ(plan.spots.size(), 8U);
    EXPECT_NEAR(plan.front.right(), plan.banks.front().area.right(), 1e-9);
    EXPECT_NEAR(plan.spots.back().area.bottom(), kSize.height(), 1e-9);
}

TEST(EnginePlanLayoutTest, KeepsRoomUnderEachBankForWhatItsCellsShare) {
    EnginePlanSpacing spacing;
    spacing.footerHeight = 30.0;
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), kSize, spacing);
    ASSERT_EQ(plan.footers.size(), 2U);
    EXPECT_NEAR(plan.footers[0].bottom(), kSize.height(), 1e-9);
    EXPECT_NEAR(plan.footers[0].top(), plan.areaOf(at(7, Valve::Exhaust)).bottom(), 1e-9);
}

TEST(EnginePlanLayoutTest, StopsCellsAtTheirLargestSizeAndCentresThem) {
    EnginePlanSpacing spacing;
    spacing.largestCell = QSizeF(100.0, 40.0);
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), kSize, spacing);
    const QRectF left = plan.areaOf(at(1, Valve::Exhaust));
    const QRectF right = plan.areaOf(at(2, Valve::Exhaust));
    EXPECT_EQ(left.size(), QSizeF(100.0, 40.0));
    EXPECT_NEAR(left.left(), kSize.width() - right.right(), 1e-9);
}

TEST(EnginePlanLayoutTest, LeavesAreasEmptyWhereThereIsNoRoom) {
    const EnginePlanLayout plan = layOutEnginePlan(defaultLayout(), QSizeF(10.0, 10.0), {});
    for (const EnginePlanLayout::Spot& spot : plan.spots) {
        EXPECT_TRUE(spot.area.isEmpty());
    }
    EXPECT_TRUE(layOutEnginePlan({}, kSize, {}).spots.empty());
}

} // namespace
} // namespace coilbook
