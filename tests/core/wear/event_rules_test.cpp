#include "core/wear/event_scores.h"
#include "core/wear/loss_functional.h"
#include "core/wear/outputs.h"
#include "tests/core/wear/reference_season.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coilbook {
namespace {

double density(double x, double mean, double variance) {
    return std::exp(-0.5 * (x - mean) * (x - mean) / variance) /
           std::sqrt(2.0 * std::numbers::pi * variance);
}

// The formulas of section 7, written out with densities instead of their logs.
TEST(EventOddsTest, AreTheDensitiesOfTheSpecification) {
    for (const double estimate : {-12.0, -1.0, 0.5, 6.0, 20.0}) {
        for (const double variance : {0.5, 2.0, 9.0}) {
            const double none = density(estimate, 0.0, variance);
            const double misread = 0.5 * (density(estimate, 0.0, variance + 100.0) +
                                          density(estimate, 0.0, variance + 1600.0));
            EXPECT_NEAR(wear::logOddsMisread(estimate, variance), std::log(0.005 * misread / none),
                        1e-9);
            const double drop = density(estimate, 6.0, variance + 9.0);
            EXPECT_NEAR(wear::logOddsDrop(estimate, variance, 3.0), std::log(0.006 * drop / none),
                        1e-9);
            EXPECT_NEAR(wear::logOddsDrop(estimate, variance, 0.0), std::log(0.001 * drop / none),
                        1e-9)
                << "half a race at least";
        }
    }
}

TEST(EventOddsTest, AHopelesslyLargeEstimateKeepsItsOdds) {
    EXPECT_TRUE(std::isfinite(wear::logOddsMisread(1e6, 0.01)));
    EXPECT_TRUE(std::isfinite(wear::logOddsDrop(1e6, 0.01, 1.0)));
}

TEST(EventOddsTest, ThePendingDropsProbabilityIsItsShareOfTheThree) {
    wear::Event event;
    event.logOddsMisread = std::log(2.0);
    event.logOddsDrop = std::log(5.0);
    EXPECT_NEAR(wear::dropProbability(event), 5.0 / (1.0 + 2.0 + 5.0), 1e-12);
    event.logOddsDrop = 5000.0;
    EXPECT_EQ(wear::dropProbability(event), 1.0);
}

// The score of an event that is not in the model (from residuals) and that of the same event in the
// model (from the posterior of its column, its own prior taken out) are two ways to one number.
TEST(EventScoresTest, ACandidateKeepsItsOddsWhenItBecomesAnEvent) {
    for (const char* name : {"engine02", "engine05", "engine10", "case_high_last",
                             "case_pending_drop", "case_two_inspections"}) {
        SCOPED_TRACE(name);
        const auto reference = testing::referenceSeason(name);
        const wear::Season& season = reference.arranged.season;
        const wear::Hyperparameters theta =
            wear::hyperPriorFor(season.hitDegreesOfFreedom).at(wear::Eta::Zero());
        const wear::Fit before = testing::fitAt(season, theta);
        const auto candidate = wear::bestCandidate(season, before.design, before.atMode);
        ASSERT_TRUE(candidate.has_value());
        const wear::Fit with = testing::fitAt(season, theta, {candidate->event});
        wear::Event judged = candidate->event;
        const double odds = wear::rejudge(0, season, with.design, with.atMode, judged);
        EXPECT_NEAR(odds, candidate->logOdds, 1e-5 * std::max(1.0, std::abs(candidate->logOdds)));
    }
}

// A re-shim or a new retainer changes the pressure, not the wear (section 7, 'Logged level
// change').
TEST(LevelChangeTest, ALoggedChangeOfThePressureIsNoLoss) {
    const auto reference = testing::referenceSeason("engine11");
    wear::Season season = reference.arranged.season;
    season.lives[4].levelChanges.push_back({3});
    const wear::Fit fit = wear::fitSeason(season).value();
    wear::Season shimmed = season;
    for (std::size_t cell = 3; cell < shimmed.lives[4].cells.size(); ++cell) {
        shimmed.lives[4].cells[cell].mean += 7.0;
    }
    const wear::Fit shimmedFit = wear::fitSeason(shimmed).value();
    for (std::size_t life = 0; life < season.lives.size(); ++life) {
        // The column's prior is flat (SD 100), not improper: 7 lbf move it by a trace.
        EXPECT_NEAR(wear::posteriorOfLife(life, season, fit).lossNow().mean(),
                    wear::posteriorOfLife(life, shimmed, shimmedFit).lossNow().mean(), 0.01);
    }
}

} // namespace
} // namespace coilbook
