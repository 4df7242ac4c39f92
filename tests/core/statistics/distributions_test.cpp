#include "core/statistics/distributions.h"
#include "tests/support/csv_table.h"
#include "tests/support/digits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace coilbook::statistics {
namespace {

using testing::CsvTable;
using testing::digitsAgreeing;

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

// mpmath, 15 digits; see tests/data/quantiles/SOURCE. We ask for 13 of them.
TEST(DistributionsTest, StudentQuantilesAgreeWithTheTable) {
    const CsvTable table("quantiles/student_t.csv");
    ASSERT_GE(table.rows(), 165U);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const double p = table.number(row, "p");
        const double nu = table.number(row, "nu");
        const double expected = table.number(row, "t_15digits");
        const auto t = studentTQuantile(p, nu);
        ASSERT_TRUE(t.has_value());
        EXPECT_GE(digitsAgreeing(*t, expected), 13) << "p " << p << ", nu " << nu;
        EXPECT_GE(digitsAgreeing(studentTCdf(expected, nu).value_or(kNaN), p), 13);
        EXPECT_GE(digitsAgreeing(studentTQuantile(1.0 - p, nu).value_or(kNaN), -expected), 11)
            << "1 - p carries the rounding of p";
    }
}

// The customary printed table, three decimals; from memory, see tests/data/quantiles/SOURCE.
TEST(DistributionsTest, StudentQuantilesAgreeWithThePrintedTable) {
    const CsvTable table("quantiles/student_t.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        std::string printed;
        try {
            printed = table.text(row, "printed_3dp");
        } catch (const std::out_of_range&) {
            continue; // a row that the printed table does not have
        }
        const auto t = studentTQuantile(table.number(row, "p"), table.number(row, "nu"));
        EXPECT_NEAR(t.value_or(kNaN), std::stod(printed), 0.00051) << "row " << row;
    }
}

TEST(DistributionsTest, NormalQuantilesAgreeWithTheTable) {
    const CsvTable table("quantiles/normal.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const double p = table.number(row, "p");
        const double z = table.number(row, "z");
        EXPECT_GE(digitsAgreeing(normalQuantile(p).value_or(kNaN), z), 12) << "p " << p;
        EXPECT_GE(digitsAgreeing(normalCdf(z).value_or(kNaN), p), 14) << "z " << z;
    }
}

// Student's t with 1 degree of freedom is the Cauchy distribution, with 2 it has a closed form
// too (standard results): F(t) = 1/2 + atan(t)/π and F(t) = 1/2 + t / (2 √(2 + t²)).
TEST(DistributionsTest, StudentCdfAgreesWithItsClosedForms) {
    const double pi = std::acos(-1.0);
    for (const double t : {-40.0, -3.0, -0.5, 0.0, 0.7, 2.0, 9.0}) {
        EXPECT_NEAR(studentTCdf(t, 1).value_or(kNaN), 0.5 + std::atan(t) / pi, 1e-14);
        EXPECT_NEAR(studentTCdf(t, 2).value_or(kNaN), 0.5 + t / (2 * std::sqrt(2 + t * t)), 1e-14);
    }
}

// mpmath, 15 digits; see tests/data/quantiles/SOURCE.
TEST(DistributionsTest, TheUpperTailOfFAgreesWithTheTable) {
    const CsvTable table("quantiles/f_upper.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const double p = table.number(row, "p");
        const auto tail =
            fUpperTail(table.number(row, "F"), table.number(row, "nu1"), table.number(row, "nu2"));
        EXPECT_GE(digitsAgreeing(tail.value_or(kNaN), 1.0 - p), 11) << "row " << row;
    }
    EXPECT_EQ(fUpperTail(kInfinity, 2, 5), 0.0);
    EXPECT_FALSE(fUpperTail(1.0, 0, 5).has_value());
}

TEST(DistributionsTest, InfinityIsCertain) {
    EXPECT_EQ(studentTCdf(kInfinity, 3), 1.0);
    EXPECT_EQ(studentTCdf(-kInfinity, 3), 0.0);
    EXPECT_EQ(normalCdf(kInfinity), 1.0);
    EXPECT_EQ(normalCdf(-kInfinity), 0.0);
}

TEST(DistributionsTest, OutsideTheDomainThereIsNoAnswerAndNoException) {
    EXPECT_FALSE(studentTCdf(1.0, 0).has_value());
    EXPECT_FALSE(studentTCdf(1.0, -1).has_value());
    EXPECT_FALSE(studentTCdf(kNaN, 3).has_value());
    EXPECT_FALSE(studentTQuantile(0.0, 3).has_value());
    EXPECT_FALSE(studentTQuantile(1.0, 3).has_value());
    EXPECT_FALSE(studentTQuantile(0.5, kNaN).has_value());
    EXPECT_FALSE(normalQuantile(1.5).has_value());
    EXPECT_FALSE(normalCdf(kNaN).has_value());
}

} // namespace
} // namespace coilbook::statistics
