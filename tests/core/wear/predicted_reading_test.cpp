#include "core/wear/outputs.h"
#include "core/wear/predicted_reading.h"
#include "tests/core/wear/dense_model.h"
#include "tests/core/wear/reference_season.h"
#include "tests/core/wear/simulated_season.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace coilbook {
namespace {

constexpr double kNoise = 0.07;

/// The season while its newest round is at `life`: that reading is still to come.
wear::Season withoutNewestOf(std::size_t life, wear::Season season) {
    std::erase_if(season.lives[life].cells, [&](const wear::Cell& cell) {
        return cell.session + 1 == season.sessions.size();
    });
    return season;
}

/// The season before the first reading of a round, `races` after its last one.
wear::Season beforeARound(wear::Season season, double races) {
    season.now += races;
    for (wear::Life& life : season.lives) {
        if (life.outSession == wear::kStillFitted) {
            life.xNow += races;
            life.xExhaustNow += races * life.kind;
        }
    }
    return season;
}

class PredictedReadingTest : public ::testing::TestWithParam<const char*> {
protected:
    PredictedReadingTest() {
        wear::Eta eta;
        eta << 0.4, -0.6, 0.3, -0.5, 0.2;
        m_theta = wear::hyperPriorFor(m_season.hitDegreesOfFreedom).at(eta);
    }

    void expectTheDenseAnswer(const wear::Season& season, const wear::NewReading& reading) const {
        const wear::Mixture predicted =
            wear::predictedReading(reading, season, testing::fitAt(season, m_theta));
        const auto [mean, variance] =
            testing::DenseModel(season, m_theta).reading(reading.life, reading.session, kNoise);
        EXPECT_NEAR(predicted.mean(), mean, 1e-6) << reading.life;
        EXPECT_NEAR(predicted.sd(), std::sqrt(variance), 1e-6) << reading.life;
    }

    wear::Season m_season =
        testing::referenceSeason(std::string("engine") + GetParam()).arranged.season;
    wear::Hyperparameters m_theta;
};

// Against the covariance of all readings written down element by element (dense_model.h).
TEST_P(PredictedReadingTest, InTheMiddleOfARoundItIsThatOfTheDenseCovariance) {
    const std::size_t newest = m_season.sessions.size() - 1;
    int seen = 0;
    for (const std::size_t life : wear::livesStillFitted(m_season)) {
        const wear::Season season = withoutNewestOf(life, m_season);
        if (!season.lives[life].cells.empty() && seen++ < 6) {
            expectTheDenseAnswer(season, {life, newest, kNoise});
        }
    }
    EXPECT_GT(seen, 0);
}

TEST_P(PredictedReadingTest, BeforeTheFirstReadingOfARoundItIsThatOfTheDenseCovariance) {
    const wear::Season season = beforeARound(m_season, 2.0);
    int seen = 0;
    for (const std::size_t life : wear::livesStillFitted(season)) {
        if (seen++ < 6) {
            expectTheDenseAnswer(season, {life, std::nullopt, kNoise});
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Engines, PredictedReadingTest, ::testing::Values("01", "05", "11"),
                         [](const auto& name) { return "engine" + std::string(name.param); });

TEST(PredictedReadingOfADroppedSpringTest, APendingDropIsHalfWayBetweenWithAndWithout) {
    const wear::Season season = testing::referenceSeason("engine01").arranged.season;
    const std::size_t life = wear::livesStillFitted(season).front();
    wear::Event event;
    event.life = life;
    event.cell = season.lives[life].cells.size() - 1;
    event.kind = wear::Event::Kind::Drop;
    const wear::Hyperparameters theta =
        wear::hyperPriorFor(season.hitDegreesOfFreedom).at(wear::Eta::Zero());
    const wear::NewReading reading{life, season.sessions.size() - 1, kNoise};
    const auto meanWith = [&](wear::Event::Kind kind, bool pending) {
        event.kind = kind;
        event.pending = pending;
        return wear::predictedReading(reading, season, testing::fitAt(season, theta, {event}))
            .mean();
    };
    const double dropped = meanWith(wear::Event::Kind::Drop, false);
    event.logOddsDrop = 0.0;
    event.logOddsMisread = -50.0;
    const double undecided = meanWith(wear::Event::Kind::Drop, true);
    const double misread = meanWith(wear::Event::Kind::Misread, false);
    EXPECT_NEAR(undecided, 0.5 * (dropped + misread), 1e-6);
    EXPECT_GT(std::abs(dropped - misread), 0.01);
}

// Whoever draws seasons from the model finds nine readings of ten inside the band that was shown
// before they were taken; one spring of each season, and the allowance, as in coverage_test.cpp.
constexpr int kSeasons = 300;
const double kAllowed = 3.0 * std::sqrt(0.9 * 0.1 / kSeasons);

bool holds(const wear::Mixture& band, double reading) {
    return band.quantile(0.05) <= reading && reading <= band.quantile(0.95);
}

TEST(PredictedReadingCoverageTest, NineOfTenReadingsFallIntoTheBandShownBeforeThem) {
    int midRound = 0;
    int first = 0;
    const testing::SimulationPlan plan{16, 5, 2, 0.5, 0.5};
    for (unsigned seed = 0; seed < kSeasons; ++seed) {
        const wear::Season drawn = testing::SeasonSimulator(plan, 6007 * (seed + 1)).draw().season;
        const std::size_t life = seed % plan.lives;
        const wear::Cell& truth = drawn.lives[life].cells.back();
        // Eight of the others have been read in the round when this one's turn comes.
        wear::Season during = withoutNewestOf(life, drawn);
        for (std::size_t other = 0; other < plan.lives; other += 2) {
            if (other / 2 != life / 2) {
                during = withoutNewestOf(other, std::move(during));
            }
        }
        const wear::NewReading next{life, plan.sessions - 1, truth.fixedVariance};
        midRound +=
            holds(wear::predictedReading(next, during, *wear::fitSeason(during)), truth.mean) ? 1
                                                                                              : 0;
        const wear::Season before =
            beforeARound(wear::firstSessions(drawn, plan.sessions - 1), 1.0);
        const wear::NewReading opening{life, std::nullopt, truth.fixedVariance};
        first +=
            holds(wear::predictedReading(opening, before, *wear::fitSeason(before)), truth.mean)
                ? 1
                : 0;
    }
    EXPECT_NEAR(static_cast<double>(midRound) / kSeasons, 0.9, kAllowed);
    EXPECT_NEAR(static_cast<double>(first) / kSeasons, 0.9, kAllowed);
}

} // namespace
} // namespace coilbook
