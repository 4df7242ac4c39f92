#include "core/units/density.h"
#include "core/units/force.h"
#include "core/units/spring_rate.h"
#include "core/units/stress.h"
#include "tests/support/csv_table.h"
#include "tests/support/digits.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::CsvTable;
using testing::digitsAgreeing;

double factorOf(const CsvTable& table, const std::string& from, const std::string& to,
                const std::string& column) {
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (table.text(row, "from") == from && table.text(row, "to") == to) {
            return table.number(row, column);
        }
    }
    throw std::runtime_error("no factor from " + from + " to " + to);
}

// Exact definitions; NIST SP 811 (2008), appendix B.8, prints seven digits. See
// tests/data/units/SOURCE. A double holds 15 digits for certain.
TEST(UnitFactorsTest, ForcesConvertByTheirExactDefinitions) {
    const CsvTable table("units/unit_factors.csv");
    const double toNewtons = Force::poundsForce(1.0).inNewtons();
    const double toPoundsForce = Force::newtons(1.0).inPoundsForce();
    EXPECT_GE(digitsAgreeing(toNewtons, factorOf(table, "lbf", "N", "factor_18_digits")), 15);
    EXPECT_GE(digitsAgreeing(toPoundsForce, factorOf(table, "N", "lbf", "factor_18_digits")), 15);
    EXPECT_NEAR(toNewtons, factorOf(table, "lbf", "N", "SP811_7_digit"), 5e-7);
    EXPECT_NEAR(toPoundsForce, factorOf(table, "N", "lbf", "SP811_7_digit"), 5e-8);
}

TEST(UnitFactorsTest, LengthsRatesStressesAndDensitiesConvertByTheirExactDefinitions) {
    const CsvTable table("units/unit_factors.csv");
    const auto expect = [&](double factor, const std::string& from, const std::string& to,
                            double ofTable = 1.0) {
        EXPECT_GE(digitsAgreeing(factor, factorOf(table, from, to, "factor_18_digits") * ofTable),
                  15)
            << from << " to " << to;
        // Seven digits printed, the last one rounded.
        EXPECT_GE(digitsAgreeing(factor, factorOf(table, from, to, "SP811_7_digit") * ofTable), 6)
            << from << " to " << to;
    };
    expect(Length::inches(1.0).inMillimetres(), "in", "mm");
    expect(SpringRate::poundsForcePerInch(1.0).inNewtonsPerMillimetre(), "lbf/in", "N/mm");
    expect(SpringRate::newtonsPerMillimetre(1.0).inPoundsForcePerInch(), "N/mm", "lbf/in");
    expect(Stress::psi(1.0).inPascals(), "psi", "Pa");
    expect(Stress::psi(1000.0).inMegapascals(), "ksi", "MPa");
    expect(Density::poundsPerCubicInch(1.0).inKilogramsPerCubicMetre(), "lb/in3", "kg/m3");
}

TEST(UnitFactorsTest, ARateTimesATravelIsAForceAndBack) {
    const SpringRate rate = SpringRate::newtonsPerMillimetre(60.0);
    EXPECT_NEAR((rate * Length::millimetres(2.0)).inNewtons(), 120.0, 1e-12);
    EXPECT_NEAR((Force::newtons(120.0) / rate).inMillimetres(), 2.0, 1e-12);
}

TEST(UnitFactorsTest, ALengthKeepsItsDecimalsThroughTheLogbook) {
    EXPECT_EQ(Length::inches(1.850).inMicroInches(), 1850000);
    EXPECT_EQ(Length::microInches(1850000), Length::inches(1.850));
    EXPECT_EQ(Length::inches(-0.0300004).inMicroInches(), -30000);
}

} // namespace
} // namespace coilbook
