#include "core/assessment/assessment.h"
#include "core/wording/wording.h"
#include "tests/core/wear/reference_season.h"
#include "tests/support/history_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace coilbook {
namespace {

using testing::At;
using testing::HistoryBuilder;

/// A history as bad as the logbook lets it be: springs that swap, gaps, repeated inspections,
/// readings from a thousandth to a thousand lbf, equal ones, coarse ones.
EngineHistory hostileHistory(unsigned seed) {
    std::mt19937 random(seed);
    const auto draw = [&](int least, int most) {
        return std::uniform_int_distribution(least, most)(random);
    };
    HistoryBuilder builder;
    const int rounds = draw(0, 7);
    for (int cylinder = 1; cylinder <= draw(1, 4); ++cylinder) {
        const int character = draw(0, 4);
        int races = 0;
        int day = 0;
        int spring = 0;
        for (int round = 0; round < rounds; ++round) {
            const int more = draw(0, 3) * (draw(0, 20) == 0 ? 300 : 1);
            races += more;
            day = more == 0 ? day + 1 : 0;
            spring += draw(0, 9) == 0 ? 1 : 0;
            const double lbf = character == 0   ? 120.0
                               : character == 1 ? 120.0 - round
                               : character == 2 ? draw(1, 1'000'000) / 1000.0
                               : character == 3 ? (round % 2 == 0 ? 1000.0 : 0.000001)
                                                : 120.0 - 0.5 * round + draw(-5, 5) / 10.0;
            const QByteArray label =
                QByteArray::number(cylinder) + '-' + QByteArray::number(spring);
            builder.spring(
                testing::intake(cylinder), label.constData(),
                {At{races, QString::number(lbf, 'f', character == 3 ? 6 : 1).toStdString(), day}});
        }
    }
    for (int race = 1; race <= draw(0, 5); ++race) {
        builder.race(race, draw(8000, 10000));
    }
    return builder.rpmCeiling(9000).build();
}

JudgingRules hostileRules(unsigned seed) {
    JudgingRules rules;
    rules.limit = Force::poundsForce(seed % 5 == 0 ? 0.000001 : seed % 7 == 0 ? 1000.0 : 5.0);
    rules.racesAhead = static_cast<int>(seed % 61);
    rules.caution = seed % 3 == 0   ? Caution::Cautious
                    : seed % 3 == 1 ? Caution::Even
                                    : Caution::Thrifty;
    return rules;
}

void expectOrdered(const std::optional<ForceEstimate>& estimate) {
    if (estimate) {
        EXPECT_TRUE(std::isfinite(estimate->low90.inPoundsForce()));
        EXPECT_TRUE(std::isfinite(estimate->high90.inPoundsForce()));
        EXPECT_LE(estimate->low90, estimate->mean);
        EXPECT_LE(estimate->mean, estimate->high90);
    }
}

void expectProbability(const std::optional<double>& probability) {
    if (probability) {
        EXPECT_GE(*probability, 0.0);
        EXPECT_LE(*probability, 1.0);
    }
}

void expectSane(const SpringAssessment& spring) {
    expectOrdered(spring.loss);
    expectOrdered(spring.lossPerRace);
    expectProbability(spring.pPastLimit);
    expectProbability(spring.pDue);
    if (spring.pPastLimit && spring.pDue) {
        EXPECT_GE(*spring.pDue, *spring.pPastLimit);
    }
    for (const auto* points : {&spring.trend, &spring.projection}) {
        for (const TrendPoint& point : *points) {
            expectOrdered(ForceEstimate{point.mean, point.low90, point.high90});
        }
    }
    if (spring.racesLeft && spring.racesLeft->p90) {
        EXPECT_LE(spring.racesLeft->p10, spring.racesLeft->median);
        EXPECT_LE(spring.racesLeft->median, spring.racesLeft->p90);
    }
    EXPECT_EQ(spring.pastBy.has_value(), spring.standing == Standing::PastLimit);
    EXPECT_FALSE(spring.reasons.empty());
    for (const Reason& reason : spring.reasons) {
        EXPECT_TRUE(std::all_of(reason.forces.begin(), reason.forces.end(),
                                [](Force f) { return std::isfinite(f.inPoundsForce()); }));
    }
}

TEST(AssessPropertiesTest, HostileHistoriesGiveOrderedFiniteNumbersAndWholeSentences) {
    for (unsigned seed = 0; seed < 400; ++seed) {
        SCOPED_TRACE(seed);
        const JudgingRules rules = hostileRules(seed);
        const Assessment assessment = assess(hostileHistory(seed), rules);
        for (const SpringAssessment& spring : assessment.springs) {
            expectSane(spring);
            for (const Reason& reason : spring.reasons) {
                const QString text = wording::reason(reason, spring, assessment, Quantities());
                EXPECT_TRUE(text.endsWith(QLatin1Char('.'))) << text.toStdString();
                EXPECT_FALSE(text.contains(QStringLiteral("nan"))) << text.toStdString();
                EXPECT_FALSE(text.contains(QLatin1Char('%'))) << text.toStdString();
            }
        }
    }
}

TEST(AssessPropertiesTest, EqualHistoriesGiveEqualAssessments) {
    for (unsigned seed = 0; seed < 100; ++seed) {
        const EngineHistory history = hostileHistory(seed);
        EXPECT_EQ(assess(history, hostileRules(seed)), assess(history, hostileRules(seed)));
    }
}

TEST(AssessPropertiesTest, TheOrderOfLivesAndRacesDoesNotMatter) {
    std::mt19937 random(7);
    for (unsigned seed = 0; seed < 100; ++seed) {
        const EngineHistory history = hostileHistory(seed);
        EngineHistory shuffled = history;
        std::shuffle(shuffled.lives.begin(), shuffled.lives.end(), random);
        std::shuffle(shuffled.races.begin(), shuffled.races.end(), random);
        EXPECT_EQ(assess(shuffled, hostileRules(seed)), assess(history, hostileRules(seed)));
    }
}

TEST(AssessPropertiesTest, AStricterLimitNeverLowersTheOdds) {
    for (unsigned seed = 0; seed < 100; ++seed) {
        const EngineHistory history = hostileHistory(seed);
        JudgingRules strict;
        strict.limit = Force::poundsForce(4.0);
        const Assessment at5 = assess(history, {});
        const Assessment at4 = assess(history, strict);
        for (std::size_t i = 0; i < at5.springs.size(); ++i) {
            EXPECT_LE(at5.springs[i].pPastLimit, at4.springs[i].pPastLimit);
            EXPECT_LE(at5.springs[i].pDue, at4.springs[i].pDue);
        }
    }
}

TEST(AssessPropertiesTest, TheNamesOfSpringsDoNotMatter) {
    const EngineHistory history = testing::referenceSeason("engine09").history;
    EngineHistory renamed = history;
    for (std::size_t i = 0; i < renamed.lives.size(); ++i) {
        renamed.lives[i].label = QString::number(9000 - static_cast<int>(i));
    }
    Assessment before = assess(history, {});
    Assessment after = assess(renamed, {});
    for (std::size_t i = 0; i < before.springs.size(); ++i) {
        after.springs[i].label = before.springs[i].label;
    }
    EXPECT_EQ(after, before);
}

/// The same readings as a tester that shows newtons would give them, to a millionth.
void readInNewtons(EngineHistory& history) {
    constexpr std::int64_t kMicro = 1'000'000;
    for (HistoryLife& life : history.lives) {
        for (HistoryCell& cell : life.cells) {
            for (HistoryHit& hit : cell.hits) {
                const double newtons = hit.value.force().inNewtons();
                hit.value = TypedForce(std::llround(newtons * kMicro), 6, ForceUnit::Newton);
            }
        }
    }
}

TEST(AssessPropertiesTest, NewtonsAndPoundsGiveTheSameAnswer) {
    EngineHistory pounds = testing::referenceSeason("engine05").history;
    HistoryTester tester;
    tester.graduation = *TypedForce::parse(QStringLiteral("2"), ForceUnit::PoundForce);
    pounds.testers = {tester}; // else the graduation is told from the readings, unit by unit
    for (HistoryLife& life : pounds.lives) {
        for (HistoryCell& cell : life.cells) {
            for (HistoryHit& hit : cell.hits) {
                hit.tester = 0;
            }
        }
    }
    EngineHistory newtons = pounds;
    readInNewtons(newtons);
    const Assessment a = assess(pounds, {});
    const Assessment b = assess(newtons, {});
    for (std::size_t i = 0; i < a.springs.size(); ++i) {
        const ForceEstimate& one = *a.springs[i].loss;
        const ForceEstimate& other = *b.springs[i].loss;
        constexpr double kRoundingOfTheNewtons = 1e-5;
        EXPECT_NEAR(one.mean.inPoundsForce(), other.mean.inPoundsForce(), kRoundingOfTheNewtons);
        EXPECT_NEAR(one.high90.inPoundsForce(), other.high90.inPoundsForce(),
                    kRoundingOfTheNewtons);
        EXPECT_NEAR(*a.springs[i].pDue, *b.springs[i].pDue, kRoundingOfTheNewtons);
        EXPECT_EQ(a.springs[i].standing, b.springs[i].standing);
    }
}

} // namespace
} // namespace coilbook
