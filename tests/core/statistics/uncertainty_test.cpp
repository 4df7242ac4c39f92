#include "core/statistics/distributions.h"
#include "core/statistics/uncertainty.h"
#include "tests/support/csv_table.h"
#include "tests/support/digits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace coilbook::statistics {
namespace {

using testing::CsvTable;
using testing::digitsAgreeing;

/// A figure of tests/data/gauge/gum_examples.csv, ten digits; see SOURCE there.
double figure(const std::string& example, const std::string& quantity) {
    const CsvTable table("gauge/gum_examples.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (table.text(row, "example").starts_with(example) &&
            table.text(row, "quantity") == quantity) {
            return table.number(row, "computed_here");
        }
    }
    throw std::runtime_error("no figure " + example + ' ' + quantity);
}

CombinedUncertainty combined(const std::vector<UncertaintyComponent>& components,
                             double level = 0.95) {
    return combineUncertainties(components, level).value();
}

// JCGM 100:2008, 4.4.5 and F.2.2.1.
TEST(UncertaintyTest, RectangularAndResolutionAgreeWithTheGuide) {
    EXPECT_GE(digitsAgreeing(rectangularUncertainty(4.0),
                             figure("GUM 4.4.5 rectangular 96-104", "u_C=4/sqrt3")),
              9);
    EXPECT_GE(digitsAgreeing(resolutionUncertainty(1.0), figure("GUM F.2.2.1", "u/dx=1/sqrt12")),
              9);
    EXPECT_NEAR(resolutionUncertainty(1.0), 0.29, 0.005);
    EXPECT_NEAR(rectangularUncertainty(0.05), 0.029, 0.0005); // EA-4/02 M:2022, S9
}

// JCGM 100:2008, H.1 (end gauge): the standard uncertainties and degrees of freedom of table H.1.
// The inputs u(l_s) 25 nm (18), u(d̄) 5.8 (24), systematic 3.9 (5) and 6.7 (8), u(δα) 2.9 (50),
// u(δθ) 16.675 (2).
TEST(UncertaintyTest, ReproducesTheEndGaugeOfTheGuide) {
    const CombinedUncertainty d = combined({{5.8, 24.0}, {3.9, 5.0}, {6.7, 8.0}});
    EXPECT_NEAR(d.standard, figure("GUM H.1", "u(d)_nm"), 0.01);
    EXPECT_NEAR(d.degreesOfFreedom.value(), 25.6, 0.2);
    const CombinedUncertainty length = combined({{25.0, 18.0},
                                                 {d.standard, d.degreesOfFreedom},
                                                 {figure("GUM H.1", "u_dalpha_nm"), 50.0},
                                                 {figure("GUM H.1", "u_dtheta_nm"), 2.0}},
                                                0.99);
    EXPECT_NEAR(length.standard * length.standard, figure("GUM H.1", "u_c^2_nm2"), 0.5);
    EXPECT_NEAR(length.degreesOfFreedom.value(), figure("GUM H.1", "nu_eff"), 0.05);
    EXPECT_NEAR(length.coverageFactor, figure("GUM H.1", "t99(16)"), 1e-8);
    EXPECT_NEAR(length.expanded, figure("GUM H.1", "U99_nm"), 0.05);
    EXPECT_NEAR(length.expanded, 93.0, 0.5); // as printed
}

// Own recomputation of √(res²/12 + s²/n), see tests/data/gauge/SOURCE.
TEST(UncertaintyTest, StepAndRepeatabilityAddAsSquares) {
    struct Case {
        std::string example;
        double step;
        double sd;
        double n;
    };

    for (const Case& each :
         {Case{"derived: resolution 1, repeatability sd 0.8, n=1", 1, 0.8, 1},
          Case{"derived: resolution 1, repeatability sd 0.8, n=3", 1, 0.8, 3},
          Case{"derived: resolution 0.1, repeatability sd 0.5, n=5", 0.1, 0.5, 5},
          Case{"derived: resolution 5, repeatability sd 0.5, n=1", 5, 0.5, 1},
          Case{"derived: resolution 2, repeatability sd 1.0, n=2", 2, 1.0, 2}}) {
        const auto u =
            combined({{resolutionUncertainty(each.step), {}}, {each.sd / std::sqrt(each.n), {}}});
        EXPECT_GE(digitsAgreeing(u.standard, figure(each.example, "u_c=sqrt(res^2/12+s^2/n)")), 9)
            << each.example;
    }
}

TEST(UncertaintyTest, WithoutLimitedKnowledgeTheFactorIsTheNormalOne) {
    const CombinedUncertainty u = combined({{3.0, {}}, {4.0, {}}});
    EXPECT_DOUBLE_EQ(u.standard, 5.0);
    EXPECT_FALSE(u.degreesOfFreedom.has_value());
    EXPECT_NEAR(u.coverageFactor, 1.959964, 1e-6);
}

TEST(UncertaintyTest, OneComponentKeepsItsOwnDegreesOfFreedom) {
    const CombinedUncertainty u = combined({{0.3, 7.0}});
    EXPECT_NEAR(u.degreesOfFreedom.value(), 7.0, 1e-9);
    EXPECT_NEAR(u.coverageFactor, studentTQuantile(0.975, 7.0).value(), 1e-12);
}

TEST(UncertaintyTest, NonsenseHasNoAnswer) {
    EXPECT_FALSE(combineUncertainties(std::vector<UncertaintyComponent>{{-1.0, {}}}).has_value());
    EXPECT_FALSE(
        combineUncertainties(std::vector<UncertaintyComponent>{{std::nan(""), {}}}).has_value());
    EXPECT_FALSE(combineUncertainties(std::vector<UncertaintyComponent>{{1.0, 0.5}}).has_value());
}

} // namespace
} // namespace coilbook::statistics
