#include "core/wording/wording.h"
#include "tests/support/printers.h"

#include <QRegularExpression>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

TEST(StandingWordsTest, EachStandingHasItsWords) {
    EXPECT_EQ(wording::standing(Standing::PastLimit, 3), QStringLiteral("past the limit"));
    EXPECT_EQ(wording::standing(Standing::Due, 3), QStringLiteral("due within 3 races"));
    EXPECT_EQ(wording::standing(Standing::Due, 1), QStringLiteral("due within 1 race"));
    EXPECT_EQ(wording::standing(Standing::Due, 0), QStringLiteral("due now"));
    EXPECT_EQ(wording::standing(Standing::Sound, 3), QStringLiteral("sound"));
    EXPECT_EQ(wording::standing(Standing::NoTrend, 3), QStringLiteral("no trend yet"));
}

TEST(StandingWordsTest, PlacesAreNamedInFull) {
    EXPECT_EQ(wording::place({Cylinder(3), Valve::Exhaust}), QStringLiteral("Cylinder 3 exhaust"));
    EXPECT_EQ(wording::place({Cylinder(12), Valve::Intake}), QStringLiteral("Cylinder 12 intake"));
    EXPECT_EQ(wording::valve(Valve::Intake), QStringLiteral("intake"));
}

// Common practice, no source: what can hurt somebody who works on valve springs.
TEST(StandingWordsTest, CautionsNameEachDangerAndDeferToRulesAndPractice) {
    const QString all = wording::cautions().join(QLatin1Char(' '));
    for (const char* word : {"compress", "eepers", "crank", "hot engine", "eye protection",
                             "rules of your series", "builder's data", "licensed practice"}) {
        EXPECT_TRUE(all.contains(QString::fromLatin1(word))) << word;
    }
    EXPECT_FALSE(all.contains(QLatin1Char('!')));
}

} // namespace
} // namespace coilbook
