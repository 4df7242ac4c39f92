#include "core/services/crank_step.h"
#include "tests/core/services/round_log.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::place;
using testing::RoundLog;

class CrankStepTest : public ::testing::Test {
protected:
    [[nodiscard]] CrankStep stepTo(int cylinder, Valve valve = Valve::Intake) const {
        const Round round(m_maker.log, m_now, RoundOrder::ByFiringOrder);
        return crankStepTo(*round.indexOf(place(cylinder, valve)), round,
                           m_maker.log.engine.layout);
    }

    RoundLog m_maker; // fires 1 8 4 3 6 5 7 2
    InspectionId m_now = m_maker.inspect("2026-05-02", 9, false);
};

TEST_F(CrankStepTest, BeforeTheFirstReadingNobodyKnowsWhereTheCrankStands) {
    EXPECT_EQ(stepTo(1), (CrankStep{Cylinder(1), std::nullopt}));
}

TEST_F(CrankStepTest, BothSpringsOfACylinderAreTestedBeforeTheCrankIsTurned) {
    m_maker.read(place(1, Valve::Intake), "1I", "121");
    EXPECT_EQ(stepTo(1, Valve::Exhaust), (CrankStep{Cylinder(1), 0.0}));
    EXPECT_EQ(stepTo(8), (CrankStep{Cylinder(8), 90.0}));
}

TEST_F(CrankStepTest, ASkippedCylinderIsTurnedPast) {
    m_maker.read(place(1, Valve::Intake), "1I", "121");
    EXPECT_EQ(stepTo(4), (CrankStep{Cylinder(4), 180.0}));
}

TEST_F(CrankStepTest, TheCrankStandsWhereTheNewestHitWasTakenAndIsTurnedOnlyForward) {
    m_maker.read(place(8, Valve::Intake), "8I", "121");
    m_maker.read(place(1, Valve::Exhaust), "1E", "121");
    EXPECT_EQ(stepTo(8), (CrankStep{Cylinder(8), 90.0}));
    m_maker.read(place(8, Valve::Exhaust), "8E", "121");
    EXPECT_EQ(stepTo(1), (CrankStep{Cylinder(1), 630.0}));
}

TEST_F(CrankStepTest, ACorrectionDoesNotMoveTheCrank) {
    const ReadingId slip = m_maker.read(place(1, Valve::Intake), "1I", "12");
    m_maker.read(place(8, Valve::Intake), "8I", "121");
    Reading correction = m_maker.log.readings.front();
    correction.id = ReadingId::make();
    correction.amends = slip;
    correction.kind = ReadingKind::Correction;
    m_maker.log.readings.push_back(correction);
    EXPECT_EQ(stepTo(8), (CrankStep{Cylinder(8), 0.0}));
}

} // namespace
} // namespace coilbook
