#include "core/units/force.h"
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

} // namespace
} // namespace coilbook
