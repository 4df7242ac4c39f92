#include "core/mechanics/helical_spring.h"
#include "tests/support/csv_table.h"
#include "tests/support/digits.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook::mechanics {
namespace {

using coilbook::testing::CsvTable;
using coilbook::testing::digitsAgreeing;

/// Outside figures; tests/data/spring/SOURCE says which are verified and which from memory.
class WorkedExamples {
public:
    [[nodiscard]] double computed(const std::string& example, const std::string& quantity,
                                  const std::string& unit = {}) const {
        return m_table.number(row(example, quantity, unit), "computed_here");
    }

    [[nodiscard]] double published(const std::string& example, const std::string& quantity) const {
        return m_table.number(row(example, quantity, {}), "published");
    }

private:
    [[nodiscard]] std::size_t row(const std::string& example, const std::string& quantity,
                                  const std::string& unit) const {
        for (std::size_t row = 0; row < m_table.rows(); ++row) {
            if (m_table.text(row, "example").starts_with(example) &&
                m_table.text(row, "quantity").starts_with(quantity) &&
                (unit.empty() || m_table.text(row, "unit") == unit)) {
                return row;
            }
        }
        throw std::runtime_error("no " + quantity + " of " + example);
    }

    CsvTable m_table{"spring/worked_examples.csv"};
};

/// The example of EN 13906-1: d = 5 mm, D = 34.6 mm, n = 9.5, G = 81500 N/mm².
HelicalSpring europeanExample() {
    return {Length::millimetres(5.0), Length::millimetres(34.6), 9.5, Stress::megapascals(81500)};
}

/// Shigley's: d = 0.037 in, D = 0.400 in, n = 10.5, G = 11.85 Mpsi (from memory).
HelicalSpring musicWireExample() {
    return {Length::inches(0.037), Length::inches(0.400), 10.5, Stress::psi(11.85e6)};
}

// Bhandari, example 10.1: verified. The rate follows from the printed deflection of 30.34 mm.
TEST(HelicalSpringTest, RateAgreesWithBhandarisExample) {
    const WorkedExamples examples;
    const HelicalSpring spring{Length::millimetres(7.0), Length::millimetres(42.0), 8.0,
                               Stress::megapascals(81370)};
    const std::optional<SpringRate> rate = springRate(spring);
    ASSERT_TRUE(rate);
    EXPECT_GE(digitsAgreeing(rate->inNewtonsPerMillimetre(),
                             examples.computed("Bhandari", "actual rate k")),
              10);
    const double travel = (Force::newtons(1250.0) / *rate).inMillimetres();
    EXPECT_NEAR(travel, examples.published("Bhandari", "actual deflection"), 0.005);
    EXPECT_NEAR(*wahlFactor(spring.index()), examples.published("Bhandari", "K Wahl"), 1e-12);
}

// A worked output after EN 13906-1: verified.
TEST(HelicalSpringTest, RateAgreesWithTheWorkedOutputOfTheEuropeanStandard) {
    const WorkedExamples examples;
    const HelicalSpring spring = europeanExample();
    const std::optional<SpringRate> rate = springRate(spring);
    ASSERT_TRUE(rate);
    EXPECT_NEAR(rate->inNewtonsPerMillimetre(), examples.published("EN 13906-1", "R"), 0.0005);
    EXPECT_GE(digitsAgreeing(rate->inNewtonsPerMillimetre(), examples.computed("EN 13906-1", "R")),
              10);
    EXPECT_NEAR(spring.index(), examples.published("EN 13906-1", "w=D/d"), 1e-12);
    EXPECT_GE(digitsAgreeing(*stressFactor(spring.index()),
                             examples.computed("EN 13906-1", "k stress correction")),
              10);
    EXPECT_GE(digitsAgreeing(plainShearStress(spring, Force::newtons(620.0))->inMegapascals(),
                             examples.computed("EN 13906-1", "tau(620 N)")),
              10);
}

// Shigley, example 10-1: the printed figures are from memory; the row computed from the same
// inputs is not.
TEST(HelicalSpringTest, RateAndFactorAgreeWithShigleysExample) {
    const WorkedExamples examples;
    const HelicalSpring spring = musicWireExample();
    const std::optional<SpringRate> rate = springRate(spring);
    ASSERT_TRUE(rate);
    EXPECT_NEAR(rate->inPoundsForcePerInch(), examples.published("Shigley", "k"), 0.005);
    EXPECT_GE(
        digitsAgreeing(rate->inPoundsForcePerInch(), examples.computed("Shigley", "k", "lbf/in")),
        10);
    EXPECT_NEAR(*stressFactor(spring.index()), examples.published("Shigley", "K_B"), 0.0005);
}

TEST(HelicalSpringTest, BothWaysToWriteTheStressFactorAreOne) {
    for (const double index : {4.0, 6.0, 10.8, 14.0}) {
        EXPECT_NEAR(*stressFactor(index), (4.0 * index + 2.0) / (4.0 * index - 3.0), 1e-12);
    }
}

// ½ √(k/m) and the constant of the standard (from memory, rounded to 3560): the worked rows.
TEST(HelicalSpringTest, SurgeAgreesWithHalfTheRootOfRateOverMass) {
    const WorkedExamples examples;
    const std::optional<double> european =
        surgeFrequency(europeanExample(), Density::kilogramsPerCubicMetre(7850.0));
    ASSERT_TRUE(european);
    EXPECT_GE(digitsAgreeing(*european, examples.computed("EN 13906-1", "f from 0.5 sqrt")), 9);
    // 3560 is 0.03 % above the constant that the derivation gives.
    EXPECT_NEAR(*european / examples.computed("EN 13906-1", "f_e=3560"), 1.0, 4e-4);
    const std::optional<double> music =
        surgeFrequency(musicWireExample(), Density::poundsPerCubicInch(0.284));
    ASSERT_TRUE(music);
    // Standard gravity in in/s² was rounded in the row: 386.09 against 386.0886.
    EXPECT_GE(digitsAgreeing(*music, examples.computed("Shigley", "f_n=(1/2)sqrt")), 4);
}

// Arora's coil-spring problem: 14045 d/(D² n) in inches, G = 1.15e7 psi; verified.
TEST(HelicalSpringTest, SurgeAgreesWithArorasCoefficient) {
    const WorkedExamples examples;
    const HelicalSpring spring{Length::inches(0.05), Length::inches(0.5), 10.0,
                               Stress::psi(1.15e7)};
    // His density is 7.38342e-4 lbf s²/in⁴ (0.285 lbf/in³ over 386 in/s²).
    const Density density = Density::poundsPerCubicInch(7.38342e-4 * 386.08858);
    const double coefficient = *surgeFrequency(spring, density) * 0.5 * 0.5 * 10.0 / 0.05;
    EXPECT_NEAR(coefficient / examples.computed("Arora", "surge f=coef"), 1.0, 1e-4);
}

// No outside source: a spring of the size of a valve spring, worked out apart from this program.
TEST(HelicalSpringTest, AValveSpringComesOutInTheRangeOfTheTrade) {
    const WorkedExamples examples;
    const HelicalSpring spring{Length::inches(0.177), Length::inches(1.283), 4.5,
                               Stress::psi(11.5e6)};
    EXPECT_GE(digitsAgreeing(springRate(spring)->inPoundsForcePerInch(),
                             examples.computed("derived", "k", "lbf/in")),
              10);
    EXPECT_GE(digitsAgreeing(springRate(spring)->inNewtonsPerMillimetre(),
                             examples.computed("derived", "k", "N/mm")),
              10);
    EXPECT_GE(digitsAgreeing(*surgeFrequency(spring, Density::poundsPerCubicInch(0.284)),
                             examples.computed("derived", "surge 0.5sqrt")),
              4);
}

TEST(HelicalSpringTest, AnImpossibleSpringHasNoFigures) {
    HelicalSpring spring = europeanExample();
    spring.activeCoils = 0.0;
    EXPECT_FALSE(springRate(spring));
    spring = europeanExample();
    spring.meanCoil = spring.wire;
    EXPECT_FALSE(springRate(spring));
    EXPECT_FALSE(plainShearStress(spring, Force::newtons(1.0)));
    EXPECT_FALSE(surgeFrequency(spring, Density::kilogramsPerCubicMetre(7850.0)));
    EXPECT_FALSE(surgeFrequency(europeanExample(), Density()));
    EXPECT_FALSE(stressFactor(0.75));
    EXPECT_FALSE(wahlFactor(1.0));
}

} // namespace
} // namespace coilbook::mechanics
