#include "core/wear/outputs.h"
#include "tests/core/wear/simulated_season.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

// Whoever draws hyperparameters, losses and readings from the model finds the truth inside its 90 %
// intervals nine times out of ten. One spring of each season is looked at, since those of one
// season share their luck: the seasons are then independent, and the binomial error of 400 of them
// is √(0.9 · 0.1/400) = 0.015. Three of these are allowed.
constexpr int kSeasons = 400;
const double kAllowed = 3.0 * std::sqrt(0.9 * 0.1 / kSeasons);

class CoverageTest : public ::testing::TestWithParam<testing::SimulationPlan> {};

TEST_P(CoverageTest, NinetyPercentIntervalsHoldTheTruthNineTimesOutOfTen) {
    int now = 0;
    int ahead = 0;
    for (unsigned seed = 0; seed < kSeasons; ++seed) {
        const testing::SimulatedSeason drawn =
            testing::SeasonSimulator(GetParam(), 7919 * (seed + 1)).draw();
        const wear::Fit fit = wear::fitSeason(drawn.season).value();
        const std::size_t life = seed % drawn.season.lives.size();
        const wear::LifePosterior posterior = wear::posteriorOfLife(life, drawn.season, fit);
        const auto holds = [](const wear::Mixture& mixture, double truth) {
            return mixture.quantile(0.05) <= truth && truth <= mixture.quantile(0.95) ? 1 : 0;
        };
        now += holds(posterior.lossNow(), drawn.lossNow[life]);
        ahead += holds(posterior.lossAhead(3), drawn.lossAhead[life]);
    }
    EXPECT_NEAR(static_cast<double>(now) / kSeasons, 0.9, kAllowed);
    EXPECT_NEAR(static_cast<double>(ahead) / kSeasons, 0.9, kAllowed);
}

INSTANTIATE_TEST_SUITE_P(SmallSeasons, CoverageTest,
                         ::testing::Values(testing::SimulationPlan{16, 3, 2, 0.5, 0.5},
                                           testing::SimulationPlan{16, 6, 2, 1.0, 0.7},
                                           testing::SimulationPlan{8, 5, 1, 2.0, 0.7}),
                         [](const auto& plan) {
                             return std::to_string(plan.param.lives) + "Springs" +
                                    std::to_string(plan.param.sessions) + "Inspections" +
                                    std::to_string(plan.param.hits) + "Hits";
                         });

} // namespace
} // namespace coilbook
