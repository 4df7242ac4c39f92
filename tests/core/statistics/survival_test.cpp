#include "core/statistics/survival.h"
#include "tests/support/csv_table.h"

#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryFile>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <map>
#include <random>
#include <sstream>

namespace coilbook::statistics {
namespace {

using Groups = std::vector<std::vector<Lifetime>>;
using testing::CsvTable;

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

/// See tests/data/survival/SOURCE.
Groups aml() {
    const CsvTable table("survival/aml.csv");
    Groups groups(2);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        groups.at(static_cast<std::size_t>(table.number(row, "group")))
            .push_back({table.number(row, "time"), table.number(row, "ended") > 0.5});
    }
    return groups;
}

/// Whole numbers of races, so that there are many ties, as in a logbook.
Groups drawn(unsigned seed, std::size_t groups) {
    std::mt19937 random(seed);
    Groups drawn(groups);
    for (std::size_t g = 0; g < groups; ++g) {
        std::geometric_distribution<int> life(0.08 * static_cast<double>(g + 1));
        std::bernoulli_distribution censored(0.3);
        for (int i = 0; i < 25; ++i) {
            drawn[g].push_back({1.0 + life(random), !censored(random)});
        }
    }
    return drawn;
}

/// Rscript where it finds the package survival; empty without.
QString rscriptWithSurvival() {
    const QString program = QStandardPaths::findExecutable(QStringLiteral("Rscript"));
    if (program.isEmpty()) {
        return {};
    }
    QProcess process;
    process.start(program, {QStringLiteral("-e"), QStringLiteral("library(survival)")});
    return process.waitForFinished(60'000) && process.exitCode() == 0 ? program : QString();
}

/// What the R package survival says, by name; empty where R or the package is not installed.
std::optional<std::map<std::string, double>> runSurvival(const QString& argument) {
    static const QString kProgram = rscriptWithSurvival();
    if (kProgram.isEmpty()) {
        return std::nullopt;
    }
    QProcess process;
    process.start(kProgram, {QStringLiteral(COILBOOK_TEST_DATA "/survival/survival.R"), argument});
    if (!process.waitForFinished(300'000) || process.exitCode() != 0) {
        throw std::runtime_error(process.readAllStandardError().toStdString());
    }
    std::map<std::string, double> values;
    std::istringstream lines(process.readAllStandardOutput().toStdString());
    std::string name;
    for (std::string value; lines >> name >> value;) {
        values[name] = value == "nan" ? kNaN : std::stod(value);
    }
    return values;
}

/// R writes 17 digits; both sides multiply the same ratios, so 12 digits are asked for.
void expectSame(double found, double expected, const std::string& what) {
    EXPECT_NEAR(found, expected, 1e-12 * std::max(1.0, std::abs(expected))) << what;
}

void expectSame(const std::optional<double>& found, double expected, const std::string& what) {
    ASSERT_EQ(found.has_value(), !std::isnan(expected)) << what;
    if (found) {
        expectSame(*found, expected, what);
    }
}

void expectCurveOf(const std::vector<Lifetime>& group, const std::string& prefix,
                   const std::map<std::string, double>& expected) {
    const auto curve = kaplanMeier(group, 0.9);
    ASSERT_TRUE(curve.has_value());
    for (std::size_t i = 0; i < curve->steps.size(); ++i) {
        const SurvivalStep& step = curve->steps[i];
        const std::string at = prefix + std::to_string(i) + ':';
        expectSame(step.time, expected.at(at + "time"), at);
        expectSame(static_cast<double>(step.atRisk), expected.at(at + "at_risk"), at);
        expectSame(static_cast<double>(step.ended), expected.at(at + "ended"), at);
        expectSame(step.survival, expected.at(at + "survival"), at + "survival");
        if (step.survival > 0.0 && step.survival < 1.0) { // R gives no interval at 0 and 1
            expectSame(step.se, expected.at(at + "se"), at + "se");
            expectSame(step.low, expected.at(at + "low"), at + "low");
            expectSame(step.high, expected.at(at + "high"), at + "high");
        }
    }
    EXPECT_FALSE(expected.contains(prefix + std::to_string(curve->steps.size()) + ":time"));
    expectSame(curve->median, expected.at(prefix + "median"), prefix + "median");
    expectSame(curve->medianLow, expected.at(prefix + "median_low"), prefix + "median_low");
    expectSame(curve->medianHigh, expected.at(prefix + "median_high"), prefix + "median_high");
}

void expectAllOf(const Groups& groups, const std::map<std::string, double>& expected) {
    for (std::size_t g = 0; g < groups.size(); ++g) {
        expectCurveOf(groups[g], std::to_string(g) + ':', expected);
    }
    const auto found = logRank(groups);
    ASSERT_TRUE(found.has_value());
    expectSame(found->chiSquared, expected.at("chi_squared"), "chi squared");
    expectSame(static_cast<double>(found->degreesOfFreedom), expected.at("degrees"), "degrees");
    expectSame(found->p, expected.at("p"), "p");
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const std::string at = std::to_string(g) + ':';
        expectSame(static_cast<double>(found->groups[g].observed), expected.at(at + "observed"),
                   at);
        expectSame(found->groups[g].expected, expected.at(at + "expected"), at + "expected");
    }
}

// Source: R package survival (Therneau), run live, on its set aml (Miller, Survival Analysis,
// 1997).
TEST(SurvivalTest, CurvesAndComparisonOfTheAmlSetAreThoseOfThePackageSurvival) {
    const auto expected = runSurvival(QStringLiteral("aml"));
    if (!expected) {
        GTEST_SKIP() << "Rscript or its package survival is not installed";
    }
    expectAllOf(aml(), *expected);
}

TEST(SurvivalTest, DrawnGroupsWithManyTiesAgreeWithThePackageSurvival) {
    for (const unsigned seed : {1U, 2U}) {
        const Groups groups = drawn(seed, 2 + seed % 3);
        QTemporaryFile file;
        ASSERT_TRUE(file.open());
        QByteArray text("time,ended,group\n");
        for (std::size_t g = 0; g < groups.size(); ++g) {
            for (const Lifetime& life : groups[g]) {
                text += QByteArray::number(life.time) + ',' + (life.ended ? '1' : '0') + ',' +
                        QByteArray::number(static_cast<int>(g)) + '\n';
            }
        }
        ASSERT_EQ(file.write(text), text.size());
        file.close();
        const auto expected = runSurvival(file.fileName());
        if (!expected) {
            GTEST_SKIP() << "Rscript or its package survival is not installed";
        }
        expectAllOf(groups, *expected);
    }
}

// Miller's figures as printed by the package for the maintained group: 10/11, 9/11, 63/88 …, median
// 31 weeks. They need no R: the product is written out here.
TEST(SurvivalTest, TheProductLimitIsTheProductOfTheSharesThatGoOn) {
    const auto curve = kaplanMeier(aml().front());
    ASSERT_TRUE(curve.has_value());
    EXPECT_EQ(curve->n, 11U);
    EXPECT_EQ(curve->ended, 7U);
    EXPECT_DOUBLE_EQ(curve->survivalAt(8.9), 1.0);
    EXPECT_DOUBLE_EQ(curve->survivalAt(9.0), 10.0 / 11.0);
    EXPECT_DOUBLE_EQ(curve->survivalAt(13.0), 10.0 / 11.0 * 9.0 / 10.0);
    EXPECT_DOUBLE_EQ(curve->survivalAt(20.0), 10.0 / 11.0 * 9.0 / 10.0 * 7.0 / 8.0);
    EXPECT_EQ(curve->median, 31.0);
}

// Without censoring the curve is the share still running, and Greenwood's variance that of a share:
// S (1 - S) / n.
TEST(SurvivalTest, WithoutCensoringTheVarianceIsThatOfAShare) {
    std::vector<Lifetime> lives;
    for (int i = 1; i <= 20; ++i) {
        lives.push_back({static_cast<double>(i), true});
    }
    const auto curve = kaplanMeier(lives);
    ASSERT_TRUE(curve.has_value());
    for (const SurvivalStep& step : curve->steps) {
        const double share = (20.0 - step.time) / 20.0;
        EXPECT_NEAR(step.survival, share, 1e-14);
        EXPECT_NEAR(step.se, std::sqrt(share * (1.0 - share) / 20.0), 1e-14);
        EXPECT_LE(step.low, step.survival);
        EXPECT_GE(step.high, step.survival);
    }
    EXPECT_EQ(curve->median, 10.5) << "one half exactly from 10 to 11";
}

TEST(SurvivalTest, WhereMostAreStillRunningThereIsNoMedian) {
    const auto curve = kaplanMeier(std::vector<Lifetime>{{3, true}, {5, false}, {6, false}});
    ASSERT_TRUE(curve.has_value());
    EXPECT_FALSE(curve->median.has_value());
    EXPECT_FALSE(curve->medianHigh.has_value());
}

TEST(SurvivalTest, GroupsThatLastAlikeDoNotDiffer) {
    const std::vector<Lifetime> group{{3, true}, {5, true}, {6, false}, {9, true}};
    const auto same = logRank({group, group});
    ASSERT_TRUE(same.has_value());
    EXPECT_NEAR(same->chiSquared, 0.0, 1e-14);
    EXPECT_NEAR(same->p, 1.0, 1e-7);
}

TEST(SurvivalTest, WhatIsNoLifetimeGivesNoAnswer) {
    EXPECT_FALSE(kaplanMeier({}).has_value());
    EXPECT_FALSE(kaplanMeier(std::vector<Lifetime>{{-1, true}}).has_value());
    EXPECT_FALSE(kaplanMeier(std::vector<Lifetime>{{kNaN, true}}).has_value());
    EXPECT_FALSE(kaplanMeier(std::vector<Lifetime>{{1, true}}, 0.0).has_value());
    EXPECT_FALSE(kaplanMeier(std::vector<Lifetime>{{1, true}}, 1.0).has_value());
    EXPECT_FALSE(logRank({}).has_value());
    EXPECT_FALSE(logRank({{{1, true}}}).has_value());
    EXPECT_FALSE(logRank({{{1, false}}, {{2, false}}}).has_value()) << "nothing failed yet";
    EXPECT_FALSE(logRank({{{1, true}}, {{kNaN, true}}}).has_value());
}

} // namespace
} // namespace coilbook::statistics
