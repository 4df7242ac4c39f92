#include "core/statistics/range_distribution.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

// Critical range factors of ISO 5725-6:1994, table 1, one decimal (from memory).
TEST(RangeDistributionTest, GivesTheCriticalRangeFactorsOfTheStandard) {
    const double factors[] = {2.8, 3.3, 3.6, 3.9, 4.0, 4.2, 4.3, 4.4, 4.5};
    for (int n = 2; n <= 10; ++n) {
        EXPECT_NEAR(rangeQuantile(n, 0.95), factors[n - 2], 0.05) << n;
    }
}

// Upper 5 % points of the studentised range with infinite degrees of freedom, which is this
// distribution: 2.772, 3.314, 3.633, 3.858 (tables of textbooks, from memory).
TEST(RangeDistributionTest, GivesTheTabledPercentagePoints) {
    const double points[] = {2.772, 3.314, 3.633, 3.858};
    for (int n = 2; n <= 5; ++n) {
        EXPECT_NEAR(rangeQuantile(n, 0.95), points[n - 2], 0.0006) << n;
    }
}

// The difference of two is normal with variance 2: exact.
TEST(RangeDistributionTest, OfTwoItIsTheHalfNormalDistribution) {
    EXPECT_NEAR(rangeQuantile(2, 0.95), 1.959963984540054 * std::sqrt(2.0), 1e-6);
    EXPECT_NEAR(rangeQuantile(2, 0.5), 0.6744897501960817 * std::sqrt(2.0), 1e-6);
}

} // namespace
} // namespace coilbook
