#include "core/assessment/hit_agreement.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

wear::HitNoise testerOf(double graduation, double variance) {
    wear::HitNoise noise;
    noise.graduation = graduation;
    noise.degreesOfFreedom = variance > 0.0 ? 40 : 3;
    noise.withinVariance = variance;
    return noise;
}

TEST(HitAgreementTest, AllowsWhatTheTestersRepeatabilityExplains) {
    const HitAgreement agreement(testerOf(0.5, 0.25));
    EXPECT_NEAR(agreement.allowedRange(2).inPoundsForce(), 2.772 * 0.5, 1e-3);
    EXPECT_NEAR(agreement.allowedRange(3).inPoundsForce(), 3.314 * 0.5, 1e-3);
    EXPECT_GE(agreement.allowedRange(40), agreement.allowedRange(9));
}

TEST(HitAgreementTest, OneGraduationIsNeverTooMuch) {
    EXPECT_NEAR(HitAgreement(testerOf(2.0, 0.02)).allowedRange(2).inPoundsForce(), 2.0, 1e-12);
}

TEST(HitAgreementTest, AnUnknownTesterIsAllowedWhatTheHitScreenAllows) {
    EXPECT_NEAR(HitAgreement().allowedRange(2).inPoundsForce(), 4.0, 1e-12);
    EXPECT_NEAR(HitAgreement(testerOf(1.0, 0.0)).allowedRange(3).inPoundsForce(), 4.0, 1e-12);
    EXPECT_NEAR(HitAgreement(testerOf(5.0, 0.0)).allowedRange(2).inPoundsForce(), 7.5, 1e-12);
}

} // namespace
} // namespace coilbook
