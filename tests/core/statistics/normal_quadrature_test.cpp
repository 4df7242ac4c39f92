#include "core/statistics/normal_quadrature.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook::statistics {
namespace {

// Moments of the standard normal distribution: 0 for odd powers, (k - 1)!! for even ones (standard
// result). A rule of n points has them all up to 2 n - 1.
TEST(NormalQuadratureTest, MomentsUpToTheDegreeOfTheRuleAreExact) {
    for (const std::size_t points : {1U, 2U, 7U, 15U}) {
        const std::vector<QuadraturePoint> rule = normalQuadrature(points);
        ASSERT_EQ(rule.size(), points);
        double moment = 1.0;
        for (std::size_t power = 0; power < 2 * points; ++power) {
            double sum = 0.0;
            double size = 0.0;
            for (const QuadraturePoint& point : rule) {
                const double term = point.weight * std::pow(point.z, static_cast<double>(power));
                sum += term;
                size += std::abs(term);
            }
            if (power > 0 && power % 2 == 0) {
                moment *= static_cast<double>(power) - 1.0;
            }
            const double expected = power % 2 == 0 ? moment : 0.0;
            EXPECT_NEAR(sum, expected, 1e-11 * std::max(size, 1.0)) << points << ' ' << power;
        }
    }
}

} // namespace
} // namespace coilbook::statistics
