#include "core/statistics/polynomial_fit.h"
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

std::map<std::string, double> column(const CsvTable& table, const std::string& of,
                                     const std::string& value, const std::string& fit = {}) {
    std::map<std::string, double> found;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (fit.empty() || table.text(row, "fit") == fit) {
            found[table.text(row, of)] = table.number(row, value);
        }
    }
    return found;
}

PolynomialFit loadCell(int degree) {
    const CsvTable data("gauge/nist_loadcell.csv");
    return PolynomialFit::of(data.numbers("load"), data.numbers("y"), degree).value();
}

// NIST StRD "Pontius", certified values to 15 digits; see tests/data/strd/SOURCE. The residuals are
// 1e-4 of y, which costs the spread about four of a double's 15.9 digits, and the raw coefficients
// another one: we ask for 10.
TEST(PolynomialFitTest, ReproducesTheCertifiedValuesOfPontius) {
    const CsvTable data("strd/pontius.csv");
    const auto certified = column(CsvTable("strd/pontius_certified.csv"), "quantity", "certified");
    const PolynomialFit fit = PolynomialFit::of(data.numbers("x"), data.numbers("y"), 2).value();
    EXPECT_EQ(fit.n(), 40U);
    EXPECT_EQ(fit.degreesOfFreedom(), 37U);
    const auto coefficients = fit.coefficients();
    const auto errors = fit.coefficientSes().value();
    for (const std::size_t i : {0U, 1U, 2U}) {
        const std::string name = std::string("B").append(std::to_string(i));
        EXPECT_GE(digitsAgreeing(coefficients.at(i), certified.at(name)), 10) << name;
        EXPECT_GE(digitsAgreeing(errors.at(i), certified.at("sd_" + name)), 10) << name;
    }
    EXPECT_GE(digitsAgreeing(fit.residualSd().value(), certified.at("residual_sd")), 10);
    EXPECT_GE(digitsAgreeing(fit.residualSumOfSquares(), certified.at("rss")), 10);
    EXPECT_GE(digitsAgreeing(fit.rSquared(), certified.at("r_squared")), 14);
}

// NIST/SEMATECH e-Handbook 2.3.6.5, recomputed with 40 digits; see tests/data/gauge/SOURCE.
TEST(PolynomialFitTest, ReproducesTheLoadCellOfTheHandbookAsLineAndAsCurve) {
    const CsvTable table("gauge/nist_loadcell_reference.csv");
    for (const int degree : {1, 2}) {
        const auto expected =
            column(table, "quantity", "computed_40digit", degree == 1 ? "linear" : "quadratic");
        const PolynomialFit fit = loadCell(degree);
        for (int i = 0; i <= degree; ++i) {
            const std::string name = std::string("B").append(std::to_string(i));
            const auto at = static_cast<std::size_t>(i);
            EXPECT_GE(digitsAgreeing(fit.coefficients().at(at), expected.at(name)), 9) << name;
            EXPECT_GE(digitsAgreeing(fit.coefficientSes()->at(at), expected.at("sd_" + name)), 10);
        }
        EXPECT_GE(digitsAgreeing(fit.residualSd().value(), expected.at("residual_sd")), 10);
        EXPECT_EQ(fit.degreesOfFreedom(), static_cast<std::size_t>(expected.at("df")));
    }
}

// The printed coefficients and spreads of the handbook's quadratic: from memory, four digits.
TEST(PolynomialFitTest, ReproducesTheHandbooksPrintedFiguresOfTheLoadCell) {
    const PolynomialFit fit = loadCell(2);
    EXPECT_NEAR(fit.coefficients()[0], -0.183980e-4, 0.5e-10);
    EXPECT_NEAR(fit.coefficients()[1], 0.100102, 0.5e-6);
    EXPECT_NEAR(fit.coefficients()[2], 0.703186e-5, 1e-11); // 0.7031865: printed cut, not rounded
    EXPECT_NEAR(fit.residualSd().value(), 0.3764e-4, 0.5e-8);
}

TEST(PolynomialFitTest, TheLoadCellsRepeatsRefuseTheLineAndAcceptTheCurve) {
    const CsvTable data("gauge/nist_loadcell.csv");
    const CsvTable table("gauge/nist_loadcell_reference.csv");
    const auto x = data.numbers("load");
    const auto y = data.numbers("y");
    for (const int degree : {1, 2}) {
        const auto expected =
            column(table, "quantity", "computed_40digit", degree == 1 ? "linear" : "quadratic");
        const LackOfFit test = lackOfFit(loadCell(degree), x, y).value();
        EXPECT_EQ(test.replicationDf, 22U);
        EXPECT_GE(digitsAgreeing(test.replicationSd, expected.at("replication_sd")), 9);
        // The residual left by the curve is 3e-5 of y: ten digits of it remain, its square fewer.
        EXPECT_GE(digitsAgreeing(test.f, expected.at("lack_of_fit_F")), 8);
        EXPECT_NEAR(100.0 * (1.0 - test.pValue), expected.at("lack_of_fit_P(F<=f)_percent"), 1e-6);
    }
}

// R 4.2.2 predict() on NIST StRD "Norris", 12 digits; see tests/data/strd/SOURCE.
TEST(PolynomialFitTest, ADegreeOfOneHasTheBandsOfALine) {
    const CsvTable data("strd/norris.csv");
    const CsvTable band("strd/norris_prediction.csv");
    const PolynomialFit fit = PolynomialFit::of(data.numbers("x"), data.numbers("y"), 1).value();
    const double t = 2.0322445093177186; // Student's t, 0.975, 34 degrees of freedom (R 4.2.2 qt)
    for (std::size_t row = 0; row < band.rows(); ++row) {
        const double x = band.number(row, "x");
        EXPECT_GE(
            digitsAgreeing(fit.at(x) - t * fit.meanSe(x).value(), band.number(row, "ci95_lo")), 9);
        EXPECT_GE(
            digitsAgreeing(fit.at(x) + t * fit.singleSe(x).value(), band.number(row, "pi95_hi")),
            9);
    }
}

// Graybill & Iyer's textbook relation for a line: u(x) = s/|b| √(1/m + 1/n + (x − x̄)²/Sxx). From
// memory; it is what the law of propagation gives for degree 1.
TEST(PolynomialFitTest, TheInverseOfALineHasItsClosedForm) {
    const std::vector<double> x{20, 40, 60, 80, 100, 120, 140};
    const std::vector<double> y{20.5, 40.0, 61.0, 80.5, 101.5, 121.0, 142.0};
    const PolynomialFit fit = PolynomialFit::of(x, y, 1).value();
    const double slope = fit.coefficients()[1];
    const double s = fit.residualSd().value();
    for (const int readings : {1, 3}) {
        const InverseReading inverse = fit.inverse(118.5, readings).value();
        EXPECT_NEAR(fit.at(inverse.x), 118.5, 1e-12);
        const double off = inverse.x - 80.0;
        EXPECT_NEAR(inverse.standardUncertainty,
                    s / slope * std::sqrt(1.0 / readings + 1.0 / 7.0 + off * off / 11200.0), 1e-12);
    }
}

TEST(PolynomialFitTest, TheInverseOfACurveGivesEveryLoadBack) {
    const PolynomialFit fit = loadCell(2);
    for (double load = 0.0; load <= 25.0; load += 0.5) {
        EXPECT_NEAR(fit.inverse(fit.at(load)).value().x, load, 1e-10);
    }
}

TEST(PolynomialFitTest, AnExactCurveCorrectsButHasNoSpread) {
    const PolynomialFit fit =
        PolynomialFit::of(std::vector{0.0, 50.0, 100.0}, std::vector{1.0, 52.0, 104.0}, 2).value();
    EXPECT_FALSE(fit.residualSd().has_value());
    EXPECT_FALSE(fit.inverse(52.0).has_value());
    EXPECT_NEAR(fit.inverseAt(52.0).value(), 50.0, 1e-12);
}

TEST(PolynomialFitTest, ACurveThatNeverStandsAtAReadingSaysSo) {
    const PolynomialFit fit =
        PolynomialFit::of(std::vector{-1.0, 0.0, 1.0, 2.0}, std::vector{0.0, 1.0, 0.0, -3.0}, 2)
            .value(); // 1 − x²
    EXPECT_FALSE(fit.inverseAt(2.0).has_value());
    EXPECT_TRUE(fit.inverseAt(-2.0).has_value());
}

TEST(PolynomialFitTest, TooFewDifferentLoadsGiveNoFit) {
    EXPECT_FALSE(PolynomialFit::of({}, {}, 1).has_value());
    EXPECT_FALSE(
        PolynomialFit::of(std::vector{1.0, 1.0, 1.0}, std::vector{1.0, 2.0, 3.0}, 1).has_value());
    EXPECT_FALSE(
        PolynomialFit::of(std::vector{1.0, 2.0, 2.0}, std::vector{1.0, 2.0, 3.0}, 2).has_value());
    EXPECT_FALSE(PolynomialFit::of(std::vector{1.0, 2.0}, std::vector{1.0, 2.0}, 3).has_value());
    EXPECT_FALSE(
        PolynomialFit::of(std::vector{1.0, std::nan("")}, std::vector{1.0, 2.0}, 1).has_value());
}

} // namespace
} // namespace coilbook::statistics
