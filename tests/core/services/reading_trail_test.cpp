#include "core/services/reading_trail.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const QString kSpring = QStringLiteral("S-06");

QStringList textsOf(const std::vector<TrailEntry>& trail) {
    QStringList texts;
    for (const TrailEntry& entry : trail) {
        texts << entry.value.text();
    }
    return texts;
}

TEST(ReadingTrailTest, ListsOneSpringsReadingsTheNewestInspectionFirst) {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 1), 0);
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("121.5"));
    (void)builder.reading(intake(3), QStringLiteral("S-05"), QStringLiteral("120"));
    builder.inspection(QDate(2026, 5, 2), 4);
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("118.0"));
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("118.5"));
    const std::vector<TrailEntry> trail = readingTrail(builder.log(), builder.spring(kSpring));
    EXPECT_EQ(textsOf(trail), QStringList({QStringLiteral("118.0"), QStringLiteral("118.5"),
                                           QStringLiteral("121.5")}));
    EXPECT_EQ(trail[1].hit, 2);
    EXPECT_EQ(trail[1].races, 4);
    EXPECT_EQ(trail[1].fate, ReadingFate::Counts);
}

TEST(ReadingTrailTest, KeepsEveryFormOfAnAmendedHitWithWhoWhenAndWhy) {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 1), 0);
    const ReadingId first = builder.reading(exhaust(3), kSpring, QStringLiteral("112.5"));
    const ReadingId second = builder.amendment(first, QStringLiteral("121.5"));
    (void)builder.amendment(second, QStringLiteral("121.0"));
    const std::vector<TrailEntry> trail = readingTrail(builder.log(), builder.spring(kSpring));
    EXPECT_EQ(textsOf(trail), QStringList({QStringLiteral("112.5"), QStringLiteral("121.5"),
                                           QStringLiteral("121.0")}));
    EXPECT_EQ(trail[0].fate, ReadingFate::Corrected);
    ASSERT_TRUE(trail[0].amendedBy.has_value());
    EXPECT_EQ(trail[0].amendedBy->why, QStringLiteral("slip of the pen"));
    EXPECT_EQ(trail[1].fate, ReadingFate::Corrected);
    EXPECT_TRUE(trail[1].correction);
    EXPECT_EQ(trail[2].fate, ReadingFate::Counts);
}

TEST(ReadingTrailTest, ShowsWhatWasWithdrawnOrTestedAgainAsStruck) {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 1), 0);
    const ReadingId wrong = builder.reading(exhaust(3), kSpring, QStringLiteral("12.1"));
    (void)builder.amendment(wrong, QStringLiteral("12.1"), ReadingKind::Withdrawal);
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("115.0"));
    (void)builder.reading(exhaust(3), kSpring, QStringLiteral("118.0"), true);
    const std::vector<TrailEntry> trail = readingTrail(builder.log(), builder.spring(kSpring));
    ASSERT_EQ(trail.size(), 3U);
    EXPECT_EQ(trail[0].fate, ReadingFate::Withdrawn);
    EXPECT_EQ(trail[1].fate, ReadingFate::Retested);
    EXPECT_EQ(trail[2].fate, ReadingFate::Counts);
    EXPECT_TRUE(trail[2].retest);
}

} // namespace
} // namespace coilbook
