#include "core/domain/current_readings.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::LogBuilder;

const QDate kDay(2026, 5, 2);
const QString kSpring = QStringLiteral("S-1");

QStringList valuesOf(const EngineLog& log) {
    QStringList values;
    for (const CurrentHit& hit : currentHits(log)) {
        values << log.readings[hit.row].value.text() +
                      (hit.crossedOut ? QStringLiteral(" crossed out") : QString());
    }
    return values;
}

TEST(CurrentReadingsTest, AnAmendmentStandsForItsOriginalWhichStaysInTheLog) {
    LogBuilder builder;
    builder.inspection(kDay, 3);
    const ReadingId first = builder.reading(exhaust(3), kSpring, QStringLiteral("171.5"));
    builder.amendment(first, QStringLiteral("117.5"));
    EXPECT_EQ(valuesOf(builder.log()), QStringList{QStringLiteral("117.5")});
    EXPECT_EQ(builder.log().readings.front().value.text(), QStringLiteral("171.5"));
}

TEST(CurrentReadingsTest, TheLastAmendmentOfAChainCounts) {
    LogBuilder builder;
    builder.inspection(kDay, 3);
    const ReadingId first = builder.reading(exhaust(3), kSpring, QStringLiteral("171.5"));
    const ReadingId second = builder.amendment(first, QStringLiteral("117.5"));
    builder.amendment(second, QStringLiteral("117.0"));
    EXPECT_EQ(valuesOf(builder.log()), QStringList{QStringLiteral("117.0")});
}

TEST(CurrentReadingsTest, AWithdrawnReadingDoesNotCountAndComesBackWhenItsWithdrawalIsAmended) {
    LogBuilder builder;
    builder.inspection(kDay, 3);
    const ReadingId first = builder.reading(exhaust(3), kSpring, QStringLiteral("117.5"));
    builder.amendment(first, QStringLiteral("117.5"), ReadingKind::Withdrawal);
    EXPECT_TRUE(valuesOf(builder.log()).isEmpty());
    builder.amendment(first, QStringLiteral("117.5"));
    EXPECT_EQ(valuesOf(builder.log()), QStringList{QStringLiteral("117.5")});
}

TEST(CurrentReadingsTest, ARetestCrossesOutTheFirstHitsOfThatSpringOnly) {
    LogBuilder builder;
    builder.inspection(kDay, 3);
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("110"));
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("111"));
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("118"), true);
    (void)builder.reading(exhaust(5), QStringLiteral("S-2"), QStringLiteral("120"));
    EXPECT_EQ(valuesOf(builder.log()),
              (QStringList{QStringLiteral("110 crossed out"), QStringLiteral("111 crossed out"),
                           QStringLiteral("118"), QStringLiteral("120")}));
}

TEST(CurrentReadingsTest, AnAmendmentWithoutItsOriginalIsLeftOut) {
    LogBuilder builder;
    builder.inspection(kDay, 3);
    const ReadingId first = builder.reading(exhaust(3), kSpring, QStringLiteral("110"));
    builder.amendment(first, QStringLiteral("111"));
    builder.log().readings.erase(builder.log().readings.begin());
    EXPECT_TRUE(valuesOf(builder.log()).isEmpty());
}

} // namespace
} // namespace coilbook
