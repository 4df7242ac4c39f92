#include "core/wording/quantities.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

const Quantities kPounds(ForceUnit::PoundForce, QLocale::c());
const Quantities kNewtons(ForceUnit::Newton, QLocale::c());

QString minus(const QString& digits) {
    return QChar(0x2212) + digits;
}

TEST(QuantitiesTest, ForcesHaveOneDecimalInPoundsForceAndNoneInNewtons) {
    EXPECT_EQ(kPounds.forceWithUnit(Force::poundsForce(117.25)), QStringLiteral("117.3 lbf"));
    // 117.25 lbf × 4.4482216152605 = 521.55 N
    EXPECT_EQ(kNewtons.forceWithUnit(Force::poundsForce(117.25)), QStringLiteral("522 N"));
}

TEST(QuantitiesTest, RatesHaveOneDecimalMore) {
    EXPECT_EQ(kPounds.rateWithUnit(Force::poundsForce(0.424)), QStringLiteral("0.42 lbf"));
    // 0.424 × 4.448 = 1.886
    EXPECT_EQ(kNewtons.rateWithUnit(Force::poundsForce(0.424)), QStringLiteral("1.9 N"));
}

TEST(QuantitiesTest, NegativeForcesHaveARealMinusSignAndZeroHasNone) {
    EXPECT_EQ(kPounds.force(Force::poundsForce(-1.25)), minus(QStringLiteral("1.3")));
    EXPECT_EQ(kPounds.force(Force::poundsForce(-0.04)), QStringLiteral("0.0"));
    EXPECT_EQ(kNewtons.force(Force::newtons(-0.4)), QStringLiteral("0"));
}

TEST(QuantitiesTest, WritesAsTheUsersLocaleDoes) {
    const Quantities german(ForceUnit::PoundForce, QLocale(QLocale::German, QLocale::Germany));
    EXPECT_EQ(german.force(Force::poundsForce(117.25)), QStringLiteral("117,3"));
    EXPECT_EQ(german.force(Force::poundsForce(-1234.5)), minus(QStringLiteral("1234,5")))
        << "no separator between thousands";
}

TEST(QuantitiesTest, DatesAreIsoAndANullDateIsEmpty) {
    EXPECT_EQ(kPounds.date(QDate(2026, 5, 2)), QStringLiteral("2026-05-02"));
    EXPECT_EQ(kPounds.date(QDate()), QString());
}

TEST(QuantitiesTest, ProbabilitiesNeverClaimToBeCertain) {
    EXPECT_EQ(kPounds.percent(0.19), QStringLiteral("19 %"));
    EXPECT_EQ(kPounds.percent(0.0), QStringLiteral("under 1 %"));
    EXPECT_EQ(kPounds.percent(0.0099), QStringLiteral("under 1 %"));
    EXPECT_EQ(kPounds.percent(0.01), QStringLiteral("1 %"));
    EXPECT_EQ(kPounds.percent(0.99), QStringLiteral("99 %"));
    EXPECT_EQ(kPounds.percent(1.0), QStringLiteral("over 99 %"));
}

} // namespace
} // namespace coilbook
