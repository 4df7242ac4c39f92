#include "core/wear/mixture.h"

#include <gtest/gtest.h>

#include <random>

namespace coilbook {
namespace {

using wear::Mixture;

// Quantiles of the standard normal distribution: 1.644853627 at 0.95 (any printed table).
TEST(MixtureTest, OneNormalHasItsTabledQuantiles) {
    const Mixture normal({{1.0, 3.0, 4.0}});
    EXPECT_NEAR(normal.quantile(0.95), 3.0 + 2.0 * 1.6448536269514722, 1e-8);
    EXPECT_NEAR(normal.quantile(0.5), 3.0, 1e-8);
    EXPECT_NEAR(normal.probabilityAtLeast(3.0), 0.5, 1e-15);
}

TEST(MixtureTest, MeanAndSpreadAreThoseOfTheWhole) {
    const Mixture two({{0.25, -1.0, 1.0}, {0.75, 3.0, 4.0}});
    EXPECT_DOUBLE_EQ(two.mean(), 2.0);
    // Within 0.25 · 1 + 0.75 · 4, between 0.25 · 9 + 0.75 · 1: 6.25.
    EXPECT_DOUBLE_EQ(two.sd(), 2.5);
}

TEST(MixtureTest, AQuantileIsNotExceededWithItsProbability) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> uniform(0.01, 1.0);
    for (int repeat = 0; repeat < 200; ++repeat) {
        std::vector<wear::MixturePart> parts;
        double sum = 0.0;
        for (int i = 0; i < 27; ++i) {
            parts.push_back({uniform(random), 40.0 * uniform(random), uniform(random)});
            sum += parts.back().weight;
        }
        for (wear::MixturePart& part : parts) {
            part.weight /= sum;
        }
        const Mixture mixture(parts);
        for (const double p : {0.001, 0.05, 0.5, 0.95, 0.999}) {
            EXPECT_NEAR(1.0 - mixture.probabilityAtLeast(mixture.quantile(p)), p, 1e-7);
        }
    }
}

TEST(MixtureTest, APointIsAPoint) {
    const Mixture point({{1.0, 2.0, 0.0}});
    EXPECT_EQ(point.quantile(0.05), 2.0);
    EXPECT_EQ(point.probabilityAtLeast(2.0), 1.0);
    EXPECT_EQ(point.probabilityAtLeast(2.1), 0.0);
}

} // namespace
} // namespace coilbook
