#include "core/assessment/line_trend.h"
#include "tests/support/history_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

using testing::At;
using testing::exhaust;
using testing::HistoryBuilder;

HistoryLife lifeOf(const std::vector<At>& readings) {
    return HistoryBuilder().spring(exhaust(3), "S-27", readings).build().lives.at(0);
}

// An example that can be worked by hand: the errors +½ −½ −½ +½ leave the line 120 − x as it is, so
// RSS = 1, s² = 1/2 with 2 degrees of freedom, Σ(x − x̄)² = 5 and se(slope) = √0.1.
const std::vector<At> kWorked{{0, "120.5"}, {1, "118.5"}, {2, "117.5"}, {3, "117.5"}};

TEST(LineTrendTest, LossIsWhatTheLineHasFallenSinceExposureZero) {
    const LineTrend trend = LineTrend::through(lifeOf(kWorked)).value();
    // t(0.95, 2) = 2.919986 (any printed table).
    const double half = 2.91998558035373 * std::sqrt(0.1);
    EXPECT_NEAR(trend.lossPerRace().mean.inPoundsForce(), 1.0, 1e-12);
    EXPECT_NEAR(trend.lossPerRace().low90.inPoundsForce(), 1.0 - half, 1e-12);
    EXPECT_NEAR(trend.lossPerRace().high90.inPoundsForce(), 1.0 + half, 1e-12);
    EXPECT_NEAR(trend.lossAt(3).mean.inPoundsForce(), 3.0, 1e-12);
    EXPECT_NEAR(trend.lossAt(3).low90.inPoundsForce(), 3.0 - 3.0 * half, 1e-12);
    EXPECT_EQ(trend.lossAt(0), ForceEstimate{});
}

// Student's t with 2 degrees of freedom: F(t) = 1/2 + t / (2 √(2 + t²)), standard result.
TEST(LineTrendTest, OddsFollowTheStudentDistributionOfTheLoss) {
    const LineTrend trend = LineTrend::through(lifeOf(kWorked)).value();
    const double t = (3.0 - 5.0) / (3.0 * std::sqrt(0.1));
    EXPECT_NEAR(trend.oddsOfReaching(Force::poundsForce(5.0), 3).value(),
                0.5 + t / (2.0 * std::sqrt(2.0 + t * t)), 1e-12);
    EXPECT_NEAR(trend.oddsOfReaching(Force::poundsForce(5.0), 5).value(), 0.5, 1e-12);
    EXPECT_EQ(trend.oddsOfReaching(Force::poundsForce(5.0), 0), 0.0);
}

TEST(LineTrendTest, TwoInspectionsGiveMeansWithoutBounds) {
    const LineTrend trend = LineTrend::through(lifeOf({{0, "120"}, {4, "118"}})).value();
    EXPECT_FALSE(trend.hasSpread());
    EXPECT_EQ(trend.meanLossPerRace(), Force::poundsForce(0.5));
    EXPECT_FALSE(trend.oddsOfReaching(Force::poundsForce(5.0), 4).has_value());
}

TEST(LineTrendTest, TwoInspectionsAtOneExposureGiveNoLine) {
    EXPECT_FALSE(LineTrend::through(lifeOf({{0, "120"}, {0, "119", 1}})).has_value());
}

// JCGM 100:2008 (GUM), F.2.2.1: a value read to a step d has the standard uncertainty d / √12.
TEST(LineTrendTest, APerfectLineIsOnlyAsSureAsTheReadingsAreFine) {
    const LineTrend trend =
        LineTrend::through(lifeOf({{0, "120"}, {1, "119"}, {2, "118"}})).value();
    // t(0.95, 1) = 6.313752; Σ(x − x̄)² = 2.
    const double half = 6.31375151467504 / std::sqrt(12.0) / std::sqrt(2.0);
    EXPECT_NEAR(trend.lossPerRace().high90.inPoundsForce(), 1.0 + half, 1e-12);
    const LineTrend finer =
        LineTrend::through(lifeOf({{0, "120.0"}, {1, "119.0"}, {2, "118.0"}})).value();
    EXPECT_NEAR(finer.lossPerRace().high90.inPoundsForce(), 1.0 + half / 10.0, 1e-12);
}

TEST(LineTrendTest, PointsCoverBothEndsAndStayFew) {
    const LineTrend trend = LineTrend::through(lifeOf(kWorked)).value();
    const std::vector<TrendPoint> points = trend.points(0, 600);
    EXPECT_LE(points.size(), 61U);
    EXPECT_EQ(points.front().exposure, 0.0);
    EXPECT_EQ(points.back().exposure, 600.0);
}

// The worked line at x = 4: 116 − t √(½ (1 + 1/4 + 2.5²/5)), and t(p, 2) = (2p − 1)/√(2p(1 − p)),
// standard result, so that the bound at p = 0.997 is 101.631.
TEST(LineTrendTest, OffTrendIsANewestReadingBelowThePredictionBound) {
    const double p = 0.997;
    const double t = (2 * p - 1) / std::sqrt(2 * p * (1 - p));
    const double bound = 116.0 - t * std::sqrt(0.5 * (1.0 + 0.25 + 1.25));
    std::vector<At> readings = kWorked;
    readings.push_back({4, "101.64"});
    EXPECT_FALSE(findOffTrend(lifeOf(readings)).has_value());
    readings.back().lbf = "101.63";
    const auto finding = findOffTrend(lifeOf(readings));
    ASSERT_TRUE(finding.has_value());
    EXPECT_NEAR(finding->lowestAllowed.inPoundsForce(), bound, 1e-9);
    EXPECT_EQ(finding->newest, Force::poundsForce(101.63));
}

TEST(LineTrendTest, OffTrendNeedsFourInspections) {
    EXPECT_FALSE(findOffTrend(lifeOf({{0, "120.0"}, {1, "119.0"}, {2, "90.0"}})).has_value());
    EXPECT_TRUE(
        findOffTrend(lifeOf({{0, "120.0"}, {1, "119.0"}, {2, "118.0"}, {3, "90.0"}})).has_value());
}

} // namespace
} // namespace coilbook
