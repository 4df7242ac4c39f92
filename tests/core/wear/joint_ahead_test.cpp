#include "core/wear/joint_ahead.h"
#include "core/wear/outputs.h"
#include "tests/core/wear/dense_model.h"
#include "tests/core/wear/reference_season.h"
#include "tests/core/wear/simulated_season.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace coilbook {
namespace {

using statistics::CountDistribution;

constexpr double kLimit = 5.0;

std::vector<wear::SpringAhead> fittedSprings(const wear::Season& season) {
    std::vector<wear::SpringAhead> springs;
    for (const std::size_t life : wear::livesStillFitted(season)) {
        springs.push_back({life, 0});
    }
    return springs;
}

class JointAheadTest : public ::testing::TestWithParam<const char*> {
protected:
    testing::ReferenceSeason m_reference = testing::referenceSeason(GetParam());

    [[nodiscard]] const wear::Season& season() const { return m_reference.arranged.season; }
};

// The covariance of all readings and of the losses to come, written down element by element
// (dense_model.h): nothing is shared with the product but the arrangement of the season.
TEST_P(JointAheadTest, LossesAheadHaveTheMomentsOfTheDenseModel) {
    wear::Eta eta;
    eta << 0.5, -0.5, 0.25, -0.75, 0.4;
    const wear::Hyperparameters theta = wear::hyperPriorFor(season().hitDegreesOfFreedom).at(eta);
    const wear::Fit fit = testing::fitAt(season(), theta);
    std::vector<wear::SpringAhead> springs = fittedSprings(season());
    springs.push_back({std::nullopt, 0});
    springs.push_back({std::nullopt, 1});
    const double races = 2.5;
    const wear::JointAhead joint(springs, season(), fit, races);
    const auto [mean, covariance] =
        testing::DenseModel(season(), theta).lossesAhead(springs, races);
    ASSERT_EQ(joint.parts().size(), 1U);
    const wear::JointAhead::Part& part = joint.parts().front();
    for (Eigen::Index a = 0; a < mean.size(); ++a) {
        EXPECT_NEAR(part.mean[a], mean[a], 1e-7) << a;
        for (Eigen::Index b = 0; b < mean.size(); ++b) {
            const double own = a == b ? part.ownVariance[a] : 0.0;
            EXPECT_NEAR(part.shared(a, b) + own, covariance(a, b), 1e-7) << a << ' ' << b;
        }
    }
}

TEST_P(JointAheadTest, EverySpringKeepsItsOwnOdds) {
    const wear::Fit fit = wear::fitSeason(season()).value();
    const std::vector<std::size_t> lives = wear::livesStillFitted(season());
    const std::vector<wear::LifePosterior> posteriors =
        wear::posteriorsOfLives(lives, season(), fit);
    for (const double races : {1.0, 4.0}) {
        const wear::JointAhead joint(fittedSprings(season()), season(), fit, races);
        const std::vector<double> odds = joint.oddsAtLeast(kLimit);
        const std::vector<double> losses = joint.meanLosses();
        double expected = 0.0;
        for (std::size_t s = 0; s < lives.size(); ++s) {
            const wear::Mixture loss = posteriors[s].lossAhead(races);
            EXPECT_NEAR(odds[s], loss.probabilityAtLeast(kLimit), 1e-9) << s;
            EXPECT_NEAR(losses[s], loss.mean(), 1e-9) << s;
            expected += odds[s];
        }
        // The mean of a count is the sum of the odds, however they hang together; the quadrature
        // keeps it to a thousandth of a spring.
        const CountDistribution counts = joint.countAtLeast(kLimit);
        ASSERT_EQ(counts.size(), lives.size() + 1);
        EXPECT_NEAR(statistics::meanOf(counts), expected, 1e-3 * std::max(1.0, expected));
    }
}

/// Draws all losses of a node at once from their full covariance, and counts.
CountDistribution simulated(const wear::JointAhead& joint, int draws) {
    std::mt19937_64 random(11);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> uniform;
    const auto n = static_cast<Eigen::Index>(joint.dropProbabilities().size());
    CountDistribution counts(static_cast<std::size_t>(n) + 1, 0.0);
    for (const wear::JointAhead::Part& part : joint.parts()) {
        Eigen::MatrixXd jittered = part.shared;
        jittered.diagonal().array() += 1e-12; // a common wander alone has rank 1
        const Eigen::MatrixXd factor = Eigen::LLT<Eigen::MatrixXd>(jittered).matrixL();
        const int ofPart = static_cast<int>(std::ceil(draws * part.weight));
        Eigen::VectorXd z(n);
        for (int draw = 0; draw < ofPart; ++draw) {
            for (double& value : z) {
                value = normal(random);
            }
            const Eigen::VectorXd common = factor * z;
            std::size_t count = 0;
            for (Eigen::Index s = 0; s < n; ++s) {
                const bool dropped =
                    uniform(random) < joint.dropProbabilities()[static_cast<std::size_t>(s)];
                const double mean = dropped ? part.stepMean[s] : part.mean[s];
                const double own = dropped ? part.stepVariance[s] : part.ownVariance[s];
                count += mean + common[s] + std::sqrt(own) * normal(random) >= kLimit ? 1U : 0U;
            }
            counts[count] += part.weight / ofPart;
        }
    }
    return counts;
}

double largestGap(const CountDistribution& a, const CountDistribution& b) {
    double sumA = 0.0;
    double sumB = 0.0;
    double gap = 0.0;
    for (std::size_t n = 0; n < a.size(); ++n) {
        sumA += a[n];
        sumB += b[n];
        gap = std::max(gap, std::abs(sumA - sumB));
    }
    return gap;
}

// 200,000 draws: the SE of a probability is at most 0.0011, and 0.006 leaves the quadrature and the
// directions that are counted as each spring's own 0.002 beside three of them.
TEST_P(JointAheadTest, TheCountAgreesWithSimulation) {
    const wear::Fit fit = wear::fitSeason(season()).value();
    for (const double races : {1.0, 4.0}) {
        const wear::JointAhead joint(fittedSprings(season()), season(), fit, races);
        EXPECT_LT(largestGap(joint.countAtLeast(kLimit), simulated(joint, 200'000)), 0.006)
            << races;
    }
}

INSTANTIATE_TEST_SUITE_P(Seasons, JointAheadTest,
                         ::testing::Values("engine01", "engine05", "engine09", "engine10",
                                           "engine11"),
                         [](const auto& name) { return std::string(name.param); });

// What all springs share makes many of them due at once, or few: the count spreads wider than that
// of springs with the same odds that know nothing of each other, and the certain number is larger.
TEST(JointCountTest, SharedUncertaintyWidensTheCount) {
    const wear::Season season = testing::SeasonSimulator({16, 4, 2, 0.5, 0.5}, 5).draw().season;
    const wear::Fit fit = wear::fitSeason(season).value();
    double races = 1.0; // about half of them due
    const auto jointAt = [&](double ahead) {
        return wear::JointAhead(fittedSprings(season), season, fit, ahead);
    };
    while (races < 40.0 && statistics::meanOf(jointAt(races).countAtLeast(kLimit)) < 8.0) {
        races += 1.0;
    }
    const wear::JointAhead joint = jointAt(races);
    const CountDistribution together = joint.countAtLeast(kLimit);
    const CountDistribution apart = statistics::poissonBinomial(joint.oddsAtLeast(kLimit));
    const auto spread = [](const CountDistribution& counts) {
        const double mean = statistics::meanOf(counts);
        double sum = 0.0;
        for (std::size_t n = 0; n < counts.size(); ++n) {
            sum += counts[n] * (static_cast<double>(n) - mean) * (static_cast<double>(n) - mean);
        }
        return std::sqrt(sum);
    };
    EXPECT_NEAR(statistics::meanOf(together), statistics::meanOf(apart), 0.01);
    EXPECT_GT(spread(together), 1.2 * spread(apart));
    EXPECT_GT(statistics::enoughFor(together, 0.9), statistics::enoughFor(apart, 0.9));
    EXPECT_LT(largestGap(together, simulated(joint, 200'000)), 0.006);
    EXPECT_GT(largestGap(apart, simulated(joint, 200'000)), 0.03);
}

} // namespace
} // namespace coilbook
