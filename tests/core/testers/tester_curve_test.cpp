#include "core/testers/calibration_picture.h"
#include "core/testers/spring_temperature.h"
#include "core/testers/tester_curve.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

Calibration certificate(const char* points, int degree = 1) {
    Calibration calibration;
    calibration.degree = degree;
    calibration.points = pointsFromText(QString::fromLatin1(points), ForceUnit::PoundForce).value();
    return calibration;
}

double correctedOf(const TesterCurve& curve, double lbf) {
    return curve.corrected(Force::poundsForce(lbf)).inPoundsForce();
}

TEST(TesterCurveTest, TakesOffWhatTheTesterShowsTooMuch) {
    // Shows 2 lbf and 3 % too much.
    const auto curve = TesterCurve::of(certificate("20:22.6 60:63.8 100:105 140:146.2"));
    ASSERT_TRUE(curve.has_value());
    EXPECT_NEAR(correctedOf(*curve, 105.0), 100.0, 1e-9);
    EXPECT_NEAR(correctedOf(*curve, 125.6), 120.0, 1e-9);
    EXPECT_NEAR(curve->uncertainty(Force::poundsForce(105.0)).value().inPoundsForce(), 0.0, 1e-9);
}

TEST(TesterCurveTest, BeyondItsTableTheCorrectionOfTheEndHolds) {
    const auto curve = TesterCurve::of(certificate("20:22.6 60:63.8 100:105 140:146.2"));
    EXPECT_NEAR(correctedOf(*curve, 200.0), 193.8, 1e-9); // 6.2 too much at 140
    EXPECT_NEAR(correctedOf(*curve, 10.0), 7.4, 1e-9);    // 2.6 too much at 20
    EXPECT_TRUE(curve->covers(Force::poundsForce(100.0)));
    EXPECT_FALSE(curve->covers(Force::poundsForce(150.0)));
}

TEST(TesterCurveTest, ATableInNewtonsCorrectsReadingsInPoundsForce) {
    Calibration calibration;
    calibration.unit = ForceUnit::Newton;
    calibration.points =
        pointsFromText(QStringLiteral("100:110 400:410 600:610"), ForceUnit::Newton).value();
    const auto curve = TesterCurve::of(calibration);
    ASSERT_TRUE(curve.has_value());
    EXPECT_NEAR(curve->corrected(Force::newtons(500.0)).inNewtons(), 490.0, 1e-9);
}

TEST(TesterCurveTest, ACurveThatTurnsInsideItsTableIsNone) {
    EXPECT_FALSE(TesterCurve::of(certificate("0:0 50:60 100:40 150:10", 2)).has_value());
    EXPECT_FALSE(TesterCurve::of(certificate("20:20 20:21")).has_value());
}

TEST(TesterCurveTest, ThePictureSaysWhenAStraightLineDoesNotFollowTheTable) {
    const char* bent = "20:20 20:20.1 60:62 60:62.1 100:106 100:106.1 140:152 140:152.1";
    EXPECT_TRUE(pictureOf(certificate(bent)).curveDoesNotFit);
    EXPECT_FALSE(pictureOf(certificate(bent, 2)).curveDoesNotFit);
    const CalibrationPicture picture = pictureOf(certificate(bent, 2));
    ASSERT_EQ(picture.points.size(), 8U);
    EXPECT_NEAR(picture.points[2].error.inPoundsForce(), 2.0, 1e-9);
    ASSERT_FALSE(picture.curve.empty());
    for (const CalibrationPicture::CurvePoint& point : picture.curve) {
        EXPECT_LT(point.low95.value(), point.error);
        EXPECT_LT(point.error, point.high95.value());
    }
}

// EN 13906-1's relation and 0.25e-3 per °C, both from memory: 100 °C above 20 °C costs 2.5 %.
TEST(SpringTemperatureTest, AHotSpringIsBroughtBackTo20Degrees) {
    const Force hot = Force::poundsForce(117.0);
    EXPECT_NEAR(forceAt20(hot, Temperature::milliCelsius(120'000), kSofteningOfSpringSteelPpm)
                    .inPoundsForce(),
                120.0, 1e-9);
    EXPECT_EQ(forceAt20(hot, Temperature::milliCelsius(20'000), 250), hot);
    EXPECT_LT(forceAt20(hot, Temperature::milliCelsius(0), 250), hot) << "cold springs read hard";
    EXPECT_EQ(forceAt20(hot, Temperature::milliCelsius(90'000), 0), hot);
}

} // namespace
} // namespace coilbook
