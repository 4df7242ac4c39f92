#include "core/wear/functional.h"
#include "core/wear/outputs.h"
#include "core/wear/session_check.h"
#include "tests/core/wear/reference_season.h"
#include "tests/core/wear/simulated_season.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

namespace coilbook {
namespace {

constexpr double kSame = 1e-9;

struct Figures {
    double loss = 0.0;
    double low = 0.0;
    double high = 0.0;
    double rate = 0.0;
    double due = 0.0;
};

Figures figuresOf(std::size_t life, const wear::Season& season, const wear::Fit& fit) {
    const wear::LifePosterior posterior = wear::posteriorOfLife(life, season, fit);
    const wear::Mixture now = posterior.lossNow();
    return {now.mean(), now.quantile(0.05), now.quantile(0.95), posterior.rate().mean(),
            posterior.oddsAhead(5.0)[3]};
}

void expectSame(const Figures& a, const Figures& b, double tolerance = kSame) {
    EXPECT_NEAR(a.loss, b.loss, tolerance);
    EXPECT_NEAR(a.low, b.low, tolerance);
    EXPECT_NEAR(a.high, b.high, tolerance);
    EXPECT_NEAR(a.rate, b.rate, tolerance);
    EXPECT_NEAR(a.due, b.due, tolerance);
}

class SeasonPropertiesTest : public ::testing::TestWithParam<const char*> {
protected:
    testing::ReferenceSeason m_reference = testing::referenceSeason(GetParam());

    [[nodiscard]] const wear::Season& season() const { return m_reference.arranged.season; }
};

TEST_P(SeasonPropertiesTest, ShiftingAllReadingsChangesNoLoss) {
    const wear::Fit fit = wear::fitSeason(season()).value();
    wear::Season shifted = season();
    for (wear::Life& life : shifted.lives) {
        for (wear::Cell& cell : life.cells) {
            cell.mean += 16.0; // a multiple of every graduation here
        }
    }
    const wear::Fit other = wear::fitSeason(shifted).value();
    for (std::size_t life = 0; life < season().lives.size(); ++life) {
        expectSame(figuresOf(life, season(), fit), figuresOf(life, shifted, other));
    }
}

TEST_P(SeasonPropertiesTest, TheOrderOfLivesChangesNothing) {
    const wear::Fit fit = wear::fitSeason(season()).value();
    std::vector<std::size_t> order(season().lives.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::shuffle(order.begin(), order.end(), std::mt19937(4));
    wear::Season shuffled = season();
    for (std::size_t i = 0; i < order.size(); ++i) {
        shuffled.lives[i] = season().lives[order[i]];
    }
    const wear::Fit other = wear::fitSeason(shuffled).value();
    for (std::size_t i = 0; i < order.size(); ++i) {
        expectSame(figuresOf(order[i], season(), fit), figuresOf(i, shuffled, other), 1e-7);
    }
}

// At fixed hyperparameters the posterior is normal, and a further reading can only add precision.
TEST_P(SeasonPropertiesTest, AReadingMoreNeverWidensTheLoss) {
    const wear::Hyperparameters theta =
        wear::hyperPriorFor(season().hitDegreesOfFreedom).at(wear::Eta::Zero());
    const wear::Fit with = testing::fitAt(season(), theta);
    std::mt19937 random(9);
    for (int repeat = 0; repeat < 12; ++repeat) {
        wear::Season fewer = season();
        wear::Life& life = fewer.lives[random() % fewer.lives.size()];
        if (life.cells.size() < 2) {
            continue;
        }
        life.cells.erase(life.cells.begin() + 1 +
                         static_cast<std::ptrdiff_t>(random() % (life.cells.size() - 1)));
        const wear::Fit without = testing::fitAt(fewer, theta);
        for (std::size_t i = 0; i < season().lives.size(); ++i) {
            const auto more = wear::posteriorOfLife(i, season(), with);
            const auto less = wear::posteriorOfLife(i, fewer, without);
            EXPECT_LE(more.lossNow().sd(), less.lossNow().sd() + kSame);
            EXPECT_LE(more.rate().sd(), less.rate().sd() + kSame);
            EXPECT_LE(more.lossAhead(10).sd(), less.lossAhead(10).sd() + kSame);
        }
    }
}

// Eight springs that share a class give what each gives in a class of its own (the least difference
// between them separates classes).
TEST_P(SeasonPropertiesTest, ClassesAreOnlyASavingOfWork) {
    const wear::Hyperparameters theta =
        wear::hyperPriorFor(season().hitDegreesOfFreedom).at(wear::Eta::Zero());
    const wear::Fit shared = testing::fitAt(season(), theta);
    wear::Season apart = season();
    for (std::size_t i = 0; i < apart.lives.size(); ++i) {
        apart.lives[i].cells.front().fixedVariance *= 1.0 + 1e-13 * static_cast<double>(i + 1);
    }
    const wear::Fit own = testing::fitAt(apart, theta);
    EXPECT_GT(own.design.classes.size(), shared.design.classes.size());
    EXPECT_NEAR(own.atMode.logMarginalLikelihood(), shared.atMode.logMarginalLikelihood(), 1e-7);
    for (std::size_t i = 0; i < apart.lives.size(); ++i) {
        expectSame(figuresOf(i, season(), shared), figuresOf(i, apart, own), 1e-8);
    }
}

TEST_P(SeasonPropertiesTest, TheFastPathOnTheSameReadingsIsTheFullFit) {
    const wear::Fit fit = wear::fitSeason(season()).value();
    const wear::Fit again = wear::refit(season(), fit).value();
    ASSERT_EQ(again.nodes.size(), fit.nodes.size());
    for (std::size_t life = 0; life < season().lives.size(); ++life) {
        expectSame(figuresOf(life, season(), again), figuresOf(life, season(), fit));
    }
}

// Specification, section 10: mode, axes and events of the fit before, noise and nodes anew. One
// more session of a season whose mode hardly moves must give nearly what the full fit gives.
TEST_P(SeasonPropertiesTest, TheFastPathFollowsAReadingThatIsCorrected) {
    wear::Fit fit = wear::fitSeason(season()).value();
    wear::Season corrected = season();
    wear::Cell& cell = corrected.lives.front().cells.back();
    cell.mean -= 1.0;
    const wear::Fit full = wear::fitSeason(corrected).value();
    const wear::Fit fast = wear::refit(corrected, std::move(fit)).value();
    for (std::size_t life = 0; life < season().lives.size(); ++life) {
        const Figures a = figuresOf(life, corrected, full);
        const Figures b = figuresOf(life, corrected, fast);
        EXPECT_NEAR(a.loss, b.loss, 0.06) << "as near as the integration itself";
        EXPECT_NEAR(a.low, b.low, 0.12);
        EXPECT_NEAR(a.high, b.high, 0.12);
    }
}

INSTANTIATE_TEST_SUITE_P(Engines, SeasonPropertiesTest,
                         ::testing::Values("engine01", "engine05", "engine09", "engine11"),
                         [](const auto& name) { return std::string(name.param); });

TEST(RefitTest, AnEventWhoseReadingIsGoneIsLeftOut) {
    const auto reference = testing::referenceSeason("case_high_last");
    wear::Season season = reference.arranged.season;
    wear::Fit fit = wear::fitSeason(season).value();
    ASSERT_EQ(fit.design.events.size(), 1U);
    season.lives[fit.design.events.front().life].cells.pop_back();
    const auto again = wear::refit(season, std::move(fit));
    ASSERT_TRUE(again.has_value());
    EXPECT_TRUE(again->design.events.empty());
}

/// Seasons as bad as their types allow: huge, tiny, equal, infinite and absent numbers.
wear::Season hostileSeason(unsigned seed) {
    std::mt19937 random(seed);
    const auto draw = [&](int least, int most) {
        return std::uniform_int_distribution(least, most)(random);
    };
    const std::vector<double> readings{0.0,
                                       1e-300,
                                       1e300,
                                       -1e9,
                                       120.0,
                                       119.5,
                                       std::numeric_limits<double>::infinity(),
                                       std::numeric_limits<double>::quiet_NaN()};
    const bool wild = draw(0, 1) == 0;
    wear::Season season;
    const int sessions = draw(1, 6);
    for (int t = 0; t < sessions; ++t) {
        const double step = draw(0, 3) == 0 ? 0.0 : draw(0, 9) == 0 ? 1e6 : 1.0;
        season.sessions.push_back(t == 0 ? 0.0 : season.sessions.back() + step);
    }
    season.now = season.sessions.back() + draw(0, 2);
    season.hitDegreesOfFreedom = draw(0, 30);
    season.runIn = draw(0, 1) == 0;
    const int lives = draw(1, 5);
    for (int s = 0; s < lives; ++s) {
        wear::Life life;
        life.kind = draw(0, 1);
        const int first = draw(0, sessions - 1);
        life.installed = season.sessions[static_cast<std::size_t>(first)];
        for (int t = first; t < sessions; ++t) {
            if (t > first && draw(0, 4) == 0) {
                continue;
            }
            wear::Cell cell;
            cell.session = static_cast<std::size_t>(t);
            cell.x = season.sessions[cell.session] - life.installed;
            cell.xExhaust = cell.x * life.kind;
            const auto any =
                static_cast<std::size_t>(draw(0, static_cast<int>(readings.size()) - 1));
            cell.mean = wild && draw(0, 3) == 0 ? readings[any] : 120.0 - 0.3 * t;
            cell.fixedVariance = wild && draw(0, 5) == 0 ? 0.0 : 0.1;
            life.cells.push_back(cell);
        }
        life.xNow = season.now - life.installed;
        life.xExhaustNow = life.xNow * life.kind;
        season.lives.push_back(std::move(life));
    }
    return season;
}

void expectProbabilities(const wear::LifePosterior& posterior, double limit) {
    for (const double odds : posterior.oddsAhead(limit)) {
        EXPECT_GE(odds, 0.0);
        EXPECT_LE(odds, 1.0);
    }
}

TEST(HostileSeasonTest, NoInputGivesANumberThatIsNone) {
    for (unsigned seed = 0; seed < 400; ++seed) {
        SCOPED_TRACE(seed);
        const wear::Season season = hostileSeason(seed);
        const std::optional<wear::Fit> fit = wear::fitSeason(season);
        if (!fit) {
            continue; // the raw rule then stands alone (specification, section 9)
        }
        for (std::size_t life = 0; life < season.lives.size(); ++life) {
            const wear::LifePosterior posterior = wear::posteriorOfLife(life, season, *fit);
            const wear::Mixture now = posterior.lossNow();
            for (const double figure : {now.mean(), now.sd(), now.quantile(0.05),
                                        now.quantile(0.95), posterior.rate().mean()}) {
                EXPECT_TRUE(std::isfinite(figure));
            }
            expectProbabilities(posterior, 5.0);
            expectProbabilities(posterior, 1e-6);
        }
        if (const auto score = wear::sessionCheck(season, *fit)) {
            EXPECT_TRUE(std::isfinite(*score));
        }
    }
}

} // namespace
} // namespace coilbook
