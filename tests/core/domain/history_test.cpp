#include "core/domain/history.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const QString kLbf = QStringLiteral("120");

QDate day(int number) {
    return QDate(2026, 4, 1).addDays(number);
}

const HistoryLife& lifeOf(const EngineHistory& history, const char* label) {
    for (const HistoryLife& life : history.lives) {
        if (life.label == QLatin1String(label)) {
            return life;
        }
    }
    throw std::runtime_error(label);
}

TEST(HistoryTest, AnEngineWithoutDataHasEmptyLists) {
    LogBuilder builder;
    const EngineHistory history = historyOf(builder.log());
    EXPECT_TRUE(history.asOf.isNull());
    EXPECT_TRUE(history.inspections.empty());
    EXPECT_TRUE(history.lives.empty());
    EXPECT_EQ(historyOf(builder.log(), day(3)).asOf, day(3));
}

TEST(HistoryTest, NowIsTheNewestRecordedDayAndTheLargerCount) {
    LogBuilder builder;
    builder.inspection(day(0), 4);
    (void)builder.reading(intake(1), QStringLiteral("S"), kLbf);
    builder.race(5, day(6)).race(6, day(13));
    const EngineHistory history = historyOf(builder.log());
    EXPECT_EQ(history.asOf, day(13));
    EXPECT_EQ(history.racesNow, 6);
    EXPECT_EQ(lifeOf(history, "S").exposureNow, 2);
    EXPECT_EQ(lifeOf(history, "S").cells.back().exposure, 0);
}

TEST(HistoryTest, DataAfterTheDayDoNotCount) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(intake(1), QStringLiteral("S"), kLbf);
    builder.race(1, day(6));
    builder.inspection(day(7), 1);
    (void)builder.reading(intake(1), QStringLiteral("T"), kLbf);
    const EngineHistory history = historyOf(builder.log(), day(5));
    EXPECT_EQ(history.racesNow, 0);
    EXPECT_EQ(history.inspections.size(), 1U);
    ASSERT_EQ(history.lives.size(), 1U);
    EXPECT_TRUE(history.lives.front().fitted);
}

TEST(HistoryTest, RacesOnTheShelfDoNotCountAsExposure) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(3), QStringLiteral("S"), kLbf);
    builder.inspection(day(7), 2);
    (void)builder.reading(exhaust(3), QStringLiteral("T"), kLbf);
    builder.inspection(day(14), 5);
    (void)builder.reading(intake(1), QStringLiteral("S"), kLbf);
    builder.inspection(day(21), 6);
    (void)builder.reading(intake(1), QStringLiteral("S"), kLbf);
    const EngineHistory history = historyOf(builder.log());
    const HistoryLife& life = lifeOf(history, "S");
    ASSERT_EQ(life.cells.size(), 3U);
    EXPECT_EQ(life.cells[1].exposure, 2);
    EXPECT_EQ(life.cells[2].exposure, 3);
    EXPECT_EQ(life.exposureNow, 3);
    EXPECT_EQ(life.spans.size(), 2U);
}

TEST(HistoryTest, TheMeanIsThatOfAllHitsThatCount) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(intake(1), QStringLiteral("S"), QStringLiteral("100"));
    (void)builder.reading(intake(1), QStringLiteral("S"), QStringLiteral("121.5"), true);
    (void)builder.reading(intake(1), QStringLiteral("S"), QStringLiteral("122.0"), true);
    const EngineHistory history = historyOf(builder.log());
    EXPECT_EQ(lifeOf(history, "S").cells.front().mean(), Force::poundsForce(121.75));
}

TEST(HistoryTest, AnOverRevIsJudgedByTheCeilingUnlessItIsStated) {
    LogBuilder builder;
    builder.log().engine.rpmCeiling = 6800; // common practice, no source
    builder.race(1, day(1), 6700).race(2, day(2), 7350).race(3, day(3), 7350);
    builder.log().races.back().overRev = false;
    const EngineHistory history = historyOf(builder.log());
    EXPECT_FALSE(history.races[0].overRev);
    EXPECT_TRUE(history.races[1].overRev);
    EXPECT_FALSE(history.races[2].overRev);
}

TEST(HistoryTest, FittedLivesGoByCylinderIntakeFirst) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(2), QStringLiteral("C"), kLbf);
    (void)builder.reading(exhaust(1), QStringLiteral("B"), kLbf);
    (void)builder.reading(intake(1), QStringLiteral("A"), kLbf);
    const EngineHistory history = historyOf(builder.log());
    QString labels;
    for (const std::size_t life : fittedLives(history)) {
        labels += history.lives[life].label;
    }
    EXPECT_EQ(labels, QStringLiteral("ABC"));
}

TEST(HistoryTest, ReachesToTheDayOfASwapThatCameAfterTheNewestInspection) {
    testing::LogBuilder builder;
    builder.inspection(QDate(2026, 5, 2), 4);
    builder.reading(testing::intake(1), QStringLiteral("A"), QStringLiteral("120"));
    builder.fit(testing::intake(1), QStringLiteral("B"), QDate(2026, 5, 3), 4);
    EXPECT_EQ(newestDay(builder.log()), QDate(2026, 5, 3));
    builder.log().fittings.back().withdrawn = true;
    EXPECT_EQ(newestDay(builder.log()), QDate(2026, 5, 2));
}

} // namespace
} // namespace coilbook
