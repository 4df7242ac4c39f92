#include "core/statistics/crossed_study.h"
#include "tests/support/csv_table.h"
#include "tests/support/digits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace coilbook::statistics {
namespace {

using testing::CsvTable;
using testing::digitsAgreeing;

std::vector<StudyReading> workedExample() {
    const CsvTable data("gauge/aiag_grr_data.csv");
    std::vector<StudyReading> readings;
    for (std::size_t row = 0; row < data.rows(); ++row) {
        readings.push_back({static_cast<std::size_t>(data.number(row, "part")) - 1,
                            static_cast<std::size_t>(data.text(row, "appraiser").at(0) - 'A'),
                            data.number(row, "y")});
    }
    return readings;
}

using Figures = std::map<std::string, double>;

/// The figures of one section; `printed` takes only those that the manual prints.
Figures figures(const std::string& section, bool printed = false) {
    const CsvTable table("gauge/aiag_grr_reference.csv");
    Figures found;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const std::string column = printed ? "published" : "computed_here";
        if (table.text(row, "section") == section && !table.text(row, column).empty()) {
            found[table.text(row, "quantity")] = table.number(row, column);
        }
    }
    return found;
}

Figures found(const VarianceShares& shares) {
    return {{"var_repeatability", shares.repeatability},
            {"var_appraiser", shares.person},
            {"var_interaction", shares.interaction},
            {"var_part", shares.part},
            {"var_grr", shares.measuring()},
            {"var_total", shares.total()},
            {"sd_EV", std::sqrt(shares.repeatability)},
            {"sd_AV", std::sqrt(shares.reproducibility())},
            {"sd_GRR", std::sqrt(shares.measuring())},
            {"sd_PV", std::sqrt(shares.part)},
            {"sd_TV", std::sqrt(shares.total())},
            {"pct_GRR_of_TV", 100.0 * std::sqrt(shares.measuring() / shares.total())},
            {"pct_contribution_GRR", 100.0 * shares.measuring() / shares.total()},
            {"ndc_unrounded", shares.distinctCategories().value()}};
}

// AIAG, Measurement Systems Analysis, 4th ed. 2010, chapter III; see tests/data/gauge/SOURCE. The
// sums are exact to the data's two decimals: we ask for 12 digits of the recomputation.
TEST(CrossedStudyTest, ReproducesTheTableOfTheWorkedExample) {
    const CrossedAnova anova = analyseCrossed(workedExample(), 10, 3).value();
    const Figures expected = figures("anova");
    const Figures sums{{"appraiser", anova.person.sumOfSquares},
                       {"part", anova.part.sumOfSquares},
                       {"interaction", anova.interaction.sumOfSquares},
                       {"equipment", anova.repeat.sumOfSquares},
                       {"total", anova.total.sumOfSquares}};
    const Figures published = figures("anova", true);
    for (const auto& [name, sum] : sums) {
        EXPECT_GE(digitsAgreeing(sum, expected.at("SS_" + name)), 12) << name;
        EXPECT_NEAR(sum, published.at("SS_" + name), 6e-6) << name << ", five printed decimals";
    }
    EXPECT_EQ(anova.repeat.degreesOfFreedom, 60U);
    EXPECT_EQ(anova.interaction.degreesOfFreedom, 18U);
    EXPECT_GE(digitsAgreeing(anova.interactionF().value(), expected.at("F_interaction")), 11);
    EXPECT_GE(digitsAgreeing(anova.interactionP().value(), expected.at("p_interaction")), 11);
}

TEST(CrossedStudyTest, SharesOutTheVarianceWithAndWithoutPooling) {
    const CrossedAnova anova = analyseCrossed(workedExample(), 10, 3).value();
    for (const Pooling pooling : {Pooling::Never, Pooling::Always}) {
        const bool pooled = pooling == Pooling::Always;
        const std::string section = pooled ? "anova_pooled" : "anova_with_interaction";
        const Figures expected = figures(section);
        const Figures printed = figures(section, true);
        const VarianceShares shares = varianceShares(anova, pooling);
        EXPECT_EQ(shares.pooled, pooled);
        for (const auto& [name, value] : found(shares)) {
            if (expected.at(name) == 0.0) {
                EXPECT_EQ(value, 0.0) << section << ' ' << name;
            } else {
                EXPECT_GE(digitsAgreeing(value, expected.at(name)), 11) << section << ' ' << name;
            }
            if (printed.contains(name) && name.starts_with("sd_")) {
                // The manual's last digits follow from figures that it had rounded before.
                EXPECT_NEAR(value, printed.at(name), 4e-4) << name;
            }
        }
        EXPECT_EQ(std::floor(shares.distinctCategories().value()), expected.at("ndc"));
    }
}

TEST(CrossedStudyTest, PoolsTheWorkedExampleByItself) {
    const CrossedAnova anova = analyseCrossed(workedExample(), 10, 3).value();
    EXPECT_TRUE(varianceShares(anova, Pooling::WhenInteractionIsUnclear).pooled);
}

TEST(CrossedStudyTest, KeepsAClearInteractionApart) {
    // Person 1 reads part 0 high and part 1 low, person 0 the other way round; hits differ by 0.1.
    const std::vector<StudyReading> crossed{{0, 0, 100.0}, {0, 0, 100.1}, {0, 1, 104.0},
                                            {0, 1, 104.1}, {1, 0, 104.0}, {1, 0, 104.1},
                                            {1, 1, 100.0}, {1, 1, 100.1}};
    const CrossedAnova anova = analyseCrossed(crossed, 2, 2).value();
    const VarianceShares shares = varianceShares(anova, Pooling::WhenInteractionIsUnclear);
    EXPECT_FALSE(shares.pooled);
    // By hand: cells lie ±2 from the mean, SS 8 · 4 = 32 on 1 df; repeats SS 4 · 0.005 on 4 df.
    EXPECT_NEAR(anova.interaction.sumOfSquares, 32.0, 1e-9);
    EXPECT_NEAR(anova.repeat.sumOfSquares, 0.02, 1e-9);
    EXPECT_NEAR(shares.interaction, (32.0 - 0.005) / 2.0, 1e-9);
    EXPECT_EQ(shares.person, 0.0);
    EXPECT_EQ(shares.part, 0.0);
}

TEST(CrossedStudyTest, OnePersonAloneShowsTheTesterAndTheSprings) {
    const std::vector<StudyReading> alone{{0, 0, 118.0}, {0, 0, 119.0}, {1, 0, 122.0},
                                          {1, 0, 121.0}, {2, 0, 125.0}, {2, 0, 125.0}};
    const CrossedAnova anova = analyseCrossed(alone, 3, 1).value();
    EXPECT_FALSE(anova.interactionF().has_value());
    const VarianceShares shares = varianceShares(anova, Pooling::Always);
    EXPECT_FALSE(shares.pooled);
    EXPECT_EQ(shares.reproducibility(), 0.0);
    EXPECT_NEAR(shares.repeatability, 1.0 / 3.0, 1e-12); // 0.5 + 0.5 + 0 on 3 df
    // Means 118.5, 121.5, 125: SS 2 · 21.1667 on 2 df, less 1/3, over 2 hits.
    EXPECT_NEAR(shares.part, (127.0 / 6.0 - 1.0 / 3.0) / 2.0, 1e-9);
}

TEST(CrossedStudyTest, AnUnbalancedOrTooSmallStudyHasNoAnswer) {
    std::vector<StudyReading> readings = workedExample();
    readings.pop_back();
    EXPECT_FALSE(analyseCrossed(readings, 10, 3).has_value());
    EXPECT_FALSE(analyseCrossed(readings, 9, 3).has_value());
    EXPECT_FALSE(analyseCrossed({}, 10, 3).has_value());
    EXPECT_FALSE(
        analyseCrossed(std::vector<StudyReading>{{0, 0, 1.0}, {1, 0, 2.0}}, 2, 1).has_value());
}

TEST(CrossedStudyTest, RepeatsThatAreAllEqualTellEveryGradeApart) {
    const std::vector<StudyReading> equal{
        {0, 0, 118.0}, {0, 0, 118.0}, {1, 0, 122.0}, {1, 0, 122.0}};
    const VarianceShares shares =
        varianceShares(analyseCrossed(equal, 2, 1).value(), Pooling::Never);
    EXPECT_FALSE(shares.distinctCategories().has_value());
}

} // namespace
} // namespace coilbook::statistics
