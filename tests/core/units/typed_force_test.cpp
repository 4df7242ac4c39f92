#include "core/units/typed_force.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <random>

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

// Drawn texts of the characters that keypads, testers and slips bring, and of any others.
TEST(TypedForceTest, NoTextBreaksItAndEveryAcceptedOnePrintsBackAsTheSameValue) {
    const QString likely = QStringLiteral("00112345678999..,, +-eE\n\t");
    std::mt19937 random(3);
    int accepted = 0;
    for (int draw = 0; draw < 200'000; ++draw) {
        QString text;
        const int length = std::uniform_int_distribution(0, 13)(random);
        for (int i = 0; i < length; ++i) {
            const bool strange = draw % 16 == 0;
            text +=
                strange
                    ? QChar(static_cast<char16_t>(std::uniform_int_distribution(0, 0xffff)(random)))
                    : likely.at(
                          std::uniform_int_distribution<qsizetype>(0, likely.size() - 1)(random));
        }
        const ForceUnit unit = draw % 2 == 0 ? ForceUnit::PoundForce : ForceUnit::Newton;
        const std::optional<TypedForce> value = TypedForce::parse(text, unit);
        if (!value) {
            continue;
        }
        ++accepted;
        const std::optional<TypedForce> again = TypedForce::parse(value->text(), unit);
        ASSERT_EQ(again, value) << text.toStdString();
        // The decimal as Qt reads it, a comma taken for the point.
        const double decimal = QString(text).replace(QLatin1Char(','), QLatin1Char('.')).toDouble();
        ASSERT_EQ(value->force(), Force::of(decimal, unit)) << text.toStdString();
    }
    EXPECT_GT(accepted, 5'000) << "the draw must reach what is accepted";
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
