#include "core/wear/outputs.h"
#include "tests/core/wear/reference_season.h"
#include "tests/support/csv_table.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

namespace coilbook {
namespace {

using testing::CsvTable;

// Source: JAGS 4.3.1, 4 chains of 40,000 draws (tests/data/wear/SOURCE), worth 2,750 independent
// ones at least: the error of an SD is then 1/sqrt(2 * 2750) = 1.35 %, that of a 5 % quantile about
// 0.04 lbf where the SD is 1 lbf, that of a mean about 0.02 lbf. Tolerances: twice these or less.
TEST(IntegrationTest, TheNodesAgreeWithMarkovChainMonteCarlo) {
    const auto season = testing::referenceSeason("engine11");
    const wear::Fit fit = wear::fitSeason(season.arranged.season, {.events = false}).value();
    const CsvTable jags("wear/ref11_jags.csv");
    ASSERT_EQ(jags.rows(), 16U);
    double squares = 0.0;
    for (std::size_t row = 0; row < jags.rows(); ++row) {
        ASSERT_EQ(season.nameOf(row),
                  jags.text(row, "cylinder") + ' ' + jags.text(row, "valve") + " life 1");
        const wear::LifePosterior life = wear::posteriorOfLife(row, season.arranged.season, fit);
        const wear::Mixture now = life.lossNow();
        const wear::Mixture ahead = life.lossAhead(3);
        const auto odds = life.oddsAhead(5.0);
        EXPECT_NEAR(now.mean(), jags.number(row, "loss"), 0.034);
        squares += std::pow(now.mean() - jags.number(row, "loss"), 2);
        EXPECT_NEAR(now.sd() / jags.number(row, "loss_sd"), 1.0, 0.020);
        EXPECT_NEAR(now.quantile(0.05), jags.number(row, "lo"), 0.08);
        EXPECT_NEAR(now.quantile(0.95), jags.number(row, "hi"), 0.08);
        EXPECT_NEAR(odds[0], jags.number(row, "p_past"), 0.011);
        EXPECT_NEAR(*std::max_element(odds.begin(), odds.begin() + 4), jags.number(row, "p_due"),
                    0.012);
        EXPECT_NEAR(ahead.mean(), jags.number(row, "loss3"), 0.049);
        EXPECT_NEAR(ahead.sd() / jags.number(row, "loss3_sd"), 1.0, 0.018);
    }
    EXPECT_LT(std::sqrt(squares / 16.0), 0.021);
}

/// The posterior by importance sampling: draws of the hyperparameters from Student's t with seven
/// degrees of freedom around the mode, weighted by what the model says of them. An own integration,
/// which shares the solution at fixed hyperparameters with the product, not its nodes.
class ImportanceSample {
public:
    struct Life {
        std::vector<wear::MixturePart> now;
        std::vector<wear::MixturePart> ahead; ///< three races
    };

    ImportanceSample(const wear::Season& season, const wear::Fit& fit, int draws)
        : m_lives(season.lives.size()) {
        wear::Objective objective(fit.design, fit.prior);
        wear::Fit at = fit;
        at.nodes = {{wear::Eta::Zero(), 1.0}};
        at.solutions.resize(1);
        std::mt19937_64 random(20260611);
        std::vector<double> logWeights;
        const wear::Eta scale = fit.axes.values.cwiseSqrt().cwiseInverse();
        for (int draw = 0; draw < draws; ++draw) {
            const wear::Eta z = drawStudent(random);
            const wear::Eta eta = fit.mode.eta + fit.axes.vectors * scale.cwiseProduct(z);
            logWeights.push_back(-objective(eta) - logStudent(z));
            const wear::Hyperparameters theta = fit.prior.at(eta);
            EXPECT_TRUE(at.solutions.front().solve(
                fit.design, theta, wear::coefficientPriorsAt(theta.lambda, season.overRevs)));
            for (std::size_t life = 0; life < m_lives.size(); ++life) {
                const wear::LifePosterior posterior = wear::posteriorOfLife(life, season, at);
                m_lives[life].now.push_back(partOf(posterior.lossNow()));
                m_lives[life].ahead.push_back(partOf(posterior.lossAhead(3)));
            }
        }
        weigh(logWeights);
    }

    [[nodiscard]] const Life& life(std::size_t index) const { return m_lives[index]; }

    [[nodiscard]] double effectiveDraws() const { return m_effective; }

private:
    static constexpr double kDegreesOfFreedom = 7.0;

    static wear::Eta drawStudent(std::mt19937_64& random) {
        std::normal_distribution<double> normal;
        std::chi_squared_distribution<double> chi2(kDegreesOfFreedom);
        wear::Eta z;
        for (double& value : z) {
            value = normal(random);
        }
        return z / std::sqrt(chi2(random) / kDegreesOfFreedom);
    }

    static double logStudent(const wear::Eta& z) {
        return -0.5 * (kDegreesOfFreedom + wear::kEta) *
               std::log1p(z.squaredNorm() / kDegreesOfFreedom);
    }

    static wear::MixturePart partOf(const wear::Mixture& normal) {
        return {0.0, normal.mean(), normal.sd() * normal.sd()};
    }

    void weigh(const std::vector<double>& logWeights) {
        const double largest = *std::max_element(logWeights.begin(), logWeights.end());
        double sum = 0.0;
        double squares = 0.0;
        for (const double logWeight : logWeights) {
            const double weight = std::exp(logWeight - largest);
            sum += weight;
            squares += weight * weight;
        }
        m_effective = sum * sum / squares;
        for (Life& life : m_lives) {
            for (std::size_t i = 0; i < logWeights.size(); ++i) {
                life.now[i].weight = std::exp(logWeights[i] - largest) / sum;
                life.ahead[i].weight = life.now[i].weight;
            }
        }
    }

    std::vector<Life> m_lives;
    double m_effective = 0.0;
};

class ImportanceSamplingTest : public ::testing::TestWithParam<const char*> {};

// Tolerances: those of the specification's section 12. Draws worth 4,000 independent ones put the
// error of a mean of SD 1 lbf at 0.016 lbf, a quarter of the smallest tolerance.
TEST_P(ImportanceSamplingTest, TheNodesAgreeWithTwentyThousandDraws) {
    const auto reference = testing::referenceSeason(GetParam());
    const wear::Season& season = reference.arranged.season;
    const wear::Fit fit = wear::fitSeason(season, {.events = false}).value();
    const ImportanceSample sample(season, fit, 20'000);
    EXPECT_GT(sample.effectiveDraws(), 4000.0);
    for (std::size_t i = 0; i < season.lives.size(); ++i) {
        SCOPED_TRACE(reference.nameOf(i));
        const wear::LifePosterior life = wear::posteriorOfLife(i, season, fit);
        const wear::Mixture now(sample.life(i).now);
        const wear::Mixture ahead(sample.life(i).ahead);
        EXPECT_NEAR(life.lossNow().mean(), now.mean(), 0.06);
        EXPECT_NEAR(life.lossNow().quantile(0.05), now.quantile(0.05), 0.12);
        EXPECT_NEAR(life.lossNow().quantile(0.95), now.quantile(0.95), 0.12);
        EXPECT_NEAR(life.lossNow().probabilityAtLeast(5.0), now.probabilityAtLeast(5.0), 0.015);
        EXPECT_NEAR(life.lossAhead(3).probabilityAtLeast(5.0), ahead.probabilityAtLeast(5.0),
                    0.015);
    }
}

INSTANTIATE_TEST_SUITE_P(Engines, ImportanceSamplingTest, ::testing::Values("engine01", "engine11"),
                         [](const auto& name) { return std::string(name.param); });

} // namespace
} // namespace coilbook
