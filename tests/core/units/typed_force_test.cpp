#include "core/units/typed_force.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

std::optional<TypedForce> lbf(const char* text) {
    return TypedForce::parse(QString::fromUtf8(text), ForceUnit::PoundForce);
}

TEST(TypedForceTest, KeepsTheDigitsAsWritten) {
    EXPECT_EQ(lbf("121.50")->text(), QStringLiteral("121.50"));
    EXPECT_EQ(lbf("121")->text(), QStringLiteral("121"));
    EXPECT_EQ(lbf("0.000001")->text(), QStringLiteral("0.000001"));
}

TEST(TypedForceTest, TakesCommaAndPointAlike) {
    EXPECT_EQ(lbf("117,25"), lbf("117.25"));
}

TEST(TypedForceTest, RefusesWhatIsNoPlainDecimal) {
    for (const char* text : {"", ".", ",", "1.", ".5", "-1", "+1", "1e3", "1 2", " 1", "1.2.3",
                             "12345", "1.1234567", "1,234.5", "١٢", "nan", "inf", "0x10"}) {
        EXPECT_FALSE(lbf(text).has_value()) << text;
    }
}

TEST(TypedForceTest, KnowsItsBounds) {
    EXPECT_FALSE(lbf("0.000000")->isWithinBounds());
    EXPECT_TRUE(lbf("1000")->isWithinBounds());
    EXPECT_FALSE(lbf("1000.000001")->isWithinBounds());
    EXPECT_TRUE(TypedForce::parse(u"4448.22", ForceUnit::Newton)->isWithinBounds());
    EXPECT_FALSE(TypedForce::parse(u"4448.221", ForceUnit::Newton)->isWithinBounds());
}

TEST(TypedForceTest, BecomesTheNearestQuantity) {
    EXPECT_EQ(lbf("117.25")->force(), Force::poundsForce(117.25));
    EXPECT_EQ(lbf("0.1")->force(), Force::poundsForce(0.1));
}

} // namespace
} // namespace coilbook
