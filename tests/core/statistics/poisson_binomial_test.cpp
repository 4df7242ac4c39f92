#include "core/statistics/poisson_binomial.h"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <random>

namespace coilbook::statistics {
namespace {

/// Every one of the 2ⁿ outcomes by itself: the definition, no source.
CountDistribution byEnumeration(const std::vector<double>& p) {
    CountDistribution counts(p.size() + 1, 0.0);
    for (unsigned outcome = 0; outcome < 1U << p.size(); ++outcome) {
        double probability = 1.0;
        for (std::size_t i = 0; i < p.size(); ++i) {
            probability *= ((outcome >> i) & 1U) != 0U ? p[i] : 1.0 - p[i];
        }
        counts[static_cast<std::size_t>(std::popcount(outcome))] += probability;
    }
    return counts;
}

// The enumeration sums 65536 terms: it carries rounding of some 1e-15 itself.
TEST(PoissonBinomialTest, AgreesWithFullEnumeration) {
    std::mt19937 random(4);
    for (std::size_t n = 0; n <= 16; ++n) {
        std::vector<double> p(n);
        for (double& value : p) {
            value = std::generate_canonical<double, 53>(random);
        }
        const CountDistribution found = poissonBinomial(p);
        const CountDistribution expected = byEnumeration(p);
        ASSERT_EQ(found.size(), n + 1);
        for (std::size_t count = 0; count <= n; ++count) {
            EXPECT_NEAR(found[count], expected[count], 1e-13) << n << " springs, " << count;
        }
    }
}

// Equal probabilities make the binomial distribution: C(16, k) p^k (1 - p)^(16 - k).
TEST(PoissonBinomialTest, EqualProbabilitiesMakeTheBinomialDistribution) {
    const double p = 0.0625; // a power of 2: the products are exact up to rounding of pow
    const CountDistribution found = poissonBinomial(std::vector<double>(16, p));
    double choose = 1.0;
    for (int k = 0; k <= 16; ++k) {
        const double expected = choose * std::pow(p, k) * std::pow(1.0 - p, 16 - k);
        EXPECT_NEAR(found[static_cast<std::size_t>(k)] / expected, 1.0, 1e-13) << k;
        choose = choose * (16 - k) / (k + 1);
    }
}

TEST(PoissonBinomialTest, CertainAndImpossibleEventsOnlyShiftTheCount) {
    EXPECT_EQ(poissonBinomial(std::vector<double>{1.0, 0.0, 1.0}),
              (CountDistribution{0.0, 0.0, 1.0, 0.0}));
    EXPECT_EQ(poissonBinomial(std::vector<double>{1.5, -0.5}), (CountDistribution{0.0, 1.0, 0.0}))
        << "rounding beyond the bounds is cut off";
}

TEST(PoissonBinomialTest, AMixtureIsTheWeightedSumAlsoOfUnequalLengths) {
    CountDistribution sum;
    addTo(sum, 0.25, {0.5, 0.5});
    addTo(sum, 0.75, {0.0, 0.0, 1.0});
    EXPECT_EQ(sum, (CountDistribution{0.125, 0.125, 0.75}));
    EXPECT_DOUBLE_EQ(meanOf(sum), 1.625);
}

TEST(PoissonBinomialTest, EnoughIsTheSmallestCountThatIsNotExceededWithTheCertainty) {
    const CountDistribution counts{0.2, 0.3, 0.4, 0.1};
    EXPECT_EQ(enoughFor(counts, 0.1), 0U);
    EXPECT_EQ(enoughFor(counts, 0.2), 0U);
    EXPECT_EQ(enoughFor(counts, 0.21), 1U);
    EXPECT_EQ(enoughFor(counts, 0.9), 2U);
    EXPECT_EQ(enoughFor(counts, 0.95), 3U);
    EXPECT_EQ(enoughFor(counts, 1.0), 3U) << "the sum may fall short of 1 by rounding";
    EXPECT_FALSE(enoughFor({}, 0.9).has_value());
}

} // namespace
} // namespace coilbook::statistics
