#include "core/assessment/spring_lives.h"
#include "tests/support/history_builder.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::At;
using testing::exhaust;
using testing::HistoryBuilder;
using testing::intake;

/// An engine of that name whose springs are read after every race; one inspection only has no
/// estimate, so a second one follows at the same readings.
EngineLog engine(const char* name, HistoryBuilder& builder) {
    EngineLog log = builder.log();
    log.engine.name = QString::fromUtf8(name);
    return log;
}

const SpringLife& lifeOf(const std::vector<SpringLife>& lives, const char* label) {
    static const SpringLife none;
    for (const SpringLife& life : lives) {
        if (life.label == QString::fromUtf8(label)) {
            return life;
        }
    }
    return none;
}

std::vector<At> falling(double perRace, int races) {
    std::vector<At> readings;
    for (int race = 0; race <= races; ++race) {
        readings.push_back({race, QString::number(120.0 - perRace * race, 'f', 1).toStdString()});
    }
    return readings;
}

TEST(SpringLivesTest, ALifeEndsWhereTheEstimateReachesTheLimit) {
    HistoryBuilder builder;
    builder.spring(exhaust(1), "fast", falling(1.0, 9));
    for (int cylinder = 1; cylinder <= 6; ++cylinder) {
        builder.spring(intake(cylinder), qPrintable(QStringLiteral("slow %1").arg(cylinder)),
                       falling(0.1, 9));
    }
    const std::vector<SpringLife> lives = springLives({engine("A", builder)});
    ASSERT_EQ(lives.size(), 7U);
    EXPECT_EQ(lifeOf(lives, "fast").end, LifeEnd::ReachedLimit);
    EXPECT_NEAR(lifeOf(lives, "fast").races, 5, 1) << "a pound a race, five pounds to lose";
    EXPECT_EQ(lifeOf(lives, "slow 1").end, LifeEnd::Running);
    EXPECT_EQ(lifeOf(lives, "slow 1").races, 9);
}

TEST(SpringLivesTest, ASpringThatWasTakenOutEarlyIsCensored) {
    HistoryBuilder builder;
    builder.spring(exhaust(1), "first", {{0, "120"}, {1, "119.8"}, {2, "119.6"}});
    builder.spring(exhaust(1), "second", {{2, "121"}, {3, "120.8"}});
    builder.spring(intake(1), "other", falling(0.1, 3));
    const std::vector<SpringLife> lives = springLives({engine("A", builder)});
    EXPECT_EQ(lifeOf(lives, "first").end, LifeEnd::TakenOut);
    EXPECT_EQ(lifeOf(lives, "first").races, 2);
    EXPECT_EQ(lifeOf(lives, "second").end, LifeEnd::Running);
    EXPECT_EQ(lifeOf(lives, "second").races, 1);
    const LifeComparison byValve = compareLives(lives, LifeGrouping::Valve);
    ASSERT_EQ(byValve.groups.size(), 2U);
    EXPECT_EQ(byValve.groups[0].valve, Valve::Intake);
    EXPECT_EQ(byValve.groups[1].running, 2U) << "one runs, one was taken out early";
    EXPECT_FALSE(byValve.difference.has_value()) << "nothing has reached the limit";
}

TEST(SpringLivesTest, ASpringInTwoEnginesHasOneLife) {
    HistoryBuilder one;
    one.spring(exhaust(1), "wanderer", {{0, "120"}, {1, "119.5"}, {2, "119.0"}});
    one.spring(exhaust(1), "next", {{2, "121"}, {3, "120.8"}});
    HistoryBuilder other;
    other.spring(intake(2), "wanderer", {{5, "118"}, {6, "117.5"}});
    EngineLog first = engine("A", one);
    EngineLog second = engine("B", other);
    const SpringId wanderer = first.springs.front().id;
    for (Spring& spring : second.springs) {
        for (Reading& reading : second.readings) {
            reading.spring = reading.spring == spring.id ? wanderer : reading.spring;
        }
        spring.id = wanderer;
    }
    ASSERT_EQ(first.springs.front().label, QStringLiteral("wanderer"));
    const std::vector<SpringLife> lives = springLives({first, second});
    const SpringLife& life = lifeOf(lives, "wanderer");
    EXPECT_EQ(life.races, 3);
    ASSERT_EQ(life.stays.size(), 2U);
}

} // namespace
} // namespace coilbook
