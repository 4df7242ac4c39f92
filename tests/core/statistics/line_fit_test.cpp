#include "core/statistics/distributions.h"
#include "core/statistics/line_fit.h"
#include "tests/support/csv_table.h"
#include "tests/support/digits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace coilbook::statistics {
namespace {

using testing::CsvTable;
using testing::digitsAgreeing;

LineFit norris() {
    const CsvTable data("strd/norris.csv");
    return fitLine(data.numbers("x"), data.numbers("y")).value();
}

// NIST StRD "Norris", certified values to 15 digits; see tests/data/strd/SOURCE. The data have at
// most five digits, the condition number costs about three of a double's 15.9: we ask for 11.
TEST(LineFitTest, ReproducesTheCertifiedValuesOfNorris) {
    const CsvTable table("strd/certified.csv");
    std::map<std::string, double> certified;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        certified[table.text(row, "quantity")] = table.number(row, "certified");
    }
    const LineFit fit = norris();
    EXPECT_EQ(fit.n, 36U);
    EXPECT_EQ(fit.degreesOfFreedom, 34U);
    EXPECT_GE(digitsAgreeing(fit.intercept, certified.at("B0")), 11);
    EXPECT_GE(digitsAgreeing(fit.slope, certified.at("B1")), 11);
    EXPECT_GE(digitsAgreeing(fit.interceptSe().value(), certified.at("sd_B0")), 11);
    EXPECT_GE(digitsAgreeing(fit.slopeSe().value(), certified.at("sd_B1")), 11);
    EXPECT_GE(digitsAgreeing(fit.residualSd.value(), certified.at("residual_sd")), 11);
    EXPECT_GE(digitsAgreeing(fit.residualSumOfSquares, certified.at("rss")), 11);
    EXPECT_GE(digitsAgreeing(fit.rSquared, certified.at("r_squared")), 14);
}

// R 4.2.2 predict(), 12 digits; see tests/data/strd/SOURCE.
TEST(LineFitTest, ReproducesThePredictionBandOfNorris) {
    const CsvTable band("strd/norris_prediction.csv");
    const LineFit fit = norris();
    const double t = studentTQuantile(0.975, static_cast<double>(fit.degreesOfFreedom)).value();
    for (std::size_t row = 0; row < band.rows(); ++row) {
        const double x = band.number(row, "x");
        const double mean = t * fit.meanSe(x).value();
        const double single = t * fit.singleSe(x).value();
        EXPECT_GE(digitsAgreeing(fit.at(x), band.number(row, "fit")), 10);
        EXPECT_GE(digitsAgreeing(fit.at(x) - mean, band.number(row, "ci95_lo")), 10);
        EXPECT_GE(digitsAgreeing(fit.at(x) + mean, band.number(row, "ci95_hi")), 10);
        EXPECT_GE(digitsAgreeing(fit.at(x) - single, band.number(row, "pi95_lo")), 10);
        EXPECT_GE(digitsAgreeing(fit.at(x) + single, band.number(row, "pi95_hi")), 10);
    }
}

// Meeker & Escobar (1998), Table C.17 and Example 13.10: the fifteen printed hours at which the
// fitted lines cross 10 %; see tests/data/degradation/SOURCE.
TEST(LineFitTest, ProjectsTheFifteenLasersToTheirPrintedHour) {
    const CsvTable data("degradation/gaas_laser.csv");
    const CsvTable reference("degradation/gaas_laser_reference.csv");
    ASSERT_EQ(reference.rows(), 15U);
    for (std::size_t unit = 0; unit < reference.rows(); ++unit) {
        std::vector<double> hours;
        std::vector<double> increase;
        for (std::size_t row = 0; row < data.rows(); ++row) {
            if (data.text(row, "unit") == reference.text(unit, "unit")) {
                hours.push_back(data.number(row, "hours"));
                increase.push_back(data.number(row, "increase_pct"));
            }
        }
        ASSERT_EQ(hours.size(), 17U);
        const LineFit fit = fitLine(hours, increase).value();
        EXPECT_EQ(std::lround(fit.crossing(10.0).value()),
                  std::lround(reference.number(unit, "published_pseudo_failure_h")))
            << "unit " << reference.text(unit, "unit");
        EXPECT_GE(digitsAgreeing(fit.slope, reference.number(unit, "slope_per_h")), 12);
        EXPECT_GE(digitsAgreeing(fit.intercept, reference.number(unit, "intercept")), 10);
        EXPECT_GE(digitsAgreeing(fit.residualSd.value(), reference.number(unit, "resid_sd")), 12);
    }
}

TEST(LineFitTest, KeepsItsDigitsFarFromTheOrigin) {
    const std::vector<double> x{1e9, 1e9 + 1, 1e9 + 2, 1e9 + 3};
    const std::vector<double> y{120.5, 118.5, 117.5, 117.5};
    const LineFit fit = fitLine(x, y).value();
    EXPECT_DOUBLE_EQ(fit.slope, -1.0);
    EXPECT_DOUBLE_EQ(fit.residualSumOfSquares, 1.0);
}

TEST(LineFitTest, TwoPointsGiveALineWithoutSpread) {
    const LineFit fit = fitLine(std::vector{0.0, 2.0}, std::vector{120.0, 119.0}).value();
    EXPECT_DOUBLE_EQ(fit.slope, -0.5);
    EXPECT_FALSE(fit.residualSd.has_value());
    EXPECT_FALSE(fit.slopeSe().has_value());
    EXPECT_FALSE(fit.singleSe(3.0).has_value());
    EXPECT_DOUBLE_EQ(fit.crossing(118.0).value(), 4.0);
}

TEST(LineFitTest, ThereIsNoLineThroughOnePointOrOnePlace) {
    EXPECT_FALSE(fitLine({}, {}).has_value());
    EXPECT_FALSE(fitLine(std::vector{1.0}, std::vector{1.0}).has_value());
    EXPECT_FALSE(fitLine(std::vector{0.1, 0.1, 0.1}, std::vector{1.0, 2.0, 3.0}).has_value());
}

TEST(LineFitTest, NumbersTooLargeForTheirSquaresGiveNoLineRatherThanNonsense) {
    EXPECT_FALSE(fitLine(std::vector{0.0, 1e200}, std::vector{0.0, 1e200}).has_value());
    EXPECT_FALSE(fitLine(std::vector{0.0, 1.0, 2.0}, std::vector{0.0, 1e300, -1e300}).has_value());
}

TEST(LineFitTest, ALevelLineCrossesNothing) {
    const LineFit fit =
        fitLine(std::vector{0.0, 1.0, 2.0}, std::vector{120.0, 120.0, 120.0}).value();
    EXPECT_FALSE(fit.crossing(115.0).has_value());
    EXPECT_DOUBLE_EQ(fit.rSquared, 1.0);
}

} // namespace
} // namespace coilbook::statistics
