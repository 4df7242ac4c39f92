#include "core/assessment/live_assessment.h"
#include "tests/support/wearing_set.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::HistoryBuilder;
using testing::intake;
using testing::wearingSet;

/// The log with one hit more, in an inspection after a further race.
EngineLog withReading(EngineLog log, const Place& place, const QString& lbf) {
    const Inspection& last = log.inspections.back();
    const Inspection next{InspectionId::make(), log.engine.id, last.inspectedOn.addDays(7),
                          last.engineRaces + 1, true};
    log.inspections.push_back(next);
    log.sittings.push_back({SittingId::make(), next.id, std::nullopt, {}, std::nullopt});
    Reading reading;
    reading.id = ReadingId::make();
    reading.sitting = log.sittings.back().id;
    for (const Reading& earlier : log.readings) {
        if (earlier.place == place) {
            reading.spring = earlier.spring;
        }
    }
    reading.place = place;
    reading.value = *TypedForce::parse(lbf, ForceUnit::PoundForce);
    log.readings.push_back(reading);
    return log;
}

class LiveAssessmentTest : public ::testing::Test {
protected:
    void SetUp() override {
        HistoryBuilder builder = wearingSet(8, 0.3);
        m_log = builder.log();
    }

    static SpringId at(const EngineHistory& history, const Place& place) {
        for (const HistoryLife& life : history.lives) {
            if (life.fitted && life.place == place) {
                return life.spring;
            }
        }
        return {};
    }

    EngineLog m_log;
};

TEST_F(LiveAssessmentTest, TheExpectedReadingFollowsTheTrend) {
    const EngineHistory history = historyOf(m_log);
    const LiveAssessment live(history, {});
    const auto figures = live.onRecord(at(history, exhaust(3)));
    ASSERT_TRUE(figures && figures->expected);
    // 123 lbf less eight races of 0.3 lbf; the errors of single readings are up to 0.4 lbf.
    EXPECT_NEAR(figures->expected->mean.inPoundsForce(), 123.0 - 8 * 0.3, 0.5);
    EXPECT_LT(figures->expected->low90, figures->expected->mean);
    EXPECT_LT(figures->expected->mean, figures->expected->high90);
}

TEST_F(LiveAssessmentTest, ASpringsOwnReadingInTheRoundDoesNotMoveItsBand) {
    const EngineHistory typed = historyOf(withReading(m_log, exhaust(3), QStringLiteral("118")));
    const EngineHistory slip = historyOf(withReading(m_log, exhaust(3), QStringLiteral("90")));
    const SpringId spring = at(typed, exhaust(3));
    const auto band = LiveAssessment(typed, {}).expectedReading(spring);
    const auto afterSlip = LiveAssessment(slip, {}).expectedReading(spring);
    ASSERT_TRUE(band && afterSlip);
    EXPECT_NEAR(afterSlip->mean.inPoundsForce(), band->mean.inPoundsForce(), 0.15);
}

TEST_F(LiveAssessmentTest, NoBandIsGivenWhereTheEngineHasRunSinceTheInspection) {
    m_log.races.push_back({RaceId::make(),
                           m_log.engine.id,
                           9,
                           m_log.inspections.back().inspectedOn.addDays(3),
                           {},
                           {},
                           {},
                           {},
                           {}});
    const EngineHistory history = historyOf(m_log);
    ASSERT_EQ(history.racesNow, 9);
    EXPECT_FALSE(LiveAssessment(history, {}).expectedReading(at(history, exhaust(3))));
}

TEST_F(LiveAssessmentTest, ARoundThatReadsLowAlarmsFromItsFourthSpringOn) {
    EngineLog log = withReading(m_log, intake(1), QStringLiteral("112.0"));
    const auto checkNow = [&] {
        const EngineHistory history = historyOf(log);
        return LiveAssessment(history, {}).onRecord(at(history, exhaust(8)))->check;
    };
    const SittingId sitting = log.sittings.back().id;
    const auto read = [&](const Place& place, double lbf) {
        Reading reading = log.readings.back();
        reading.id = ReadingId::make();
        reading.sitting = sitting;
        for (const Reading& earlier : log.readings) {
            reading.spring = earlier.place == place ? earlier.spring : reading.spring;
        }
        reading.place = place;
        reading.value = *TypedForce::parse(QString::number(lbf, 'f', 1), ForceUnit::PoundForce);
        log.readings.push_back(reading);
    };
    // Each has lost 2.7 lbf by its trend and reads 6 lbf lower still.
    read(intake(2), 122.0 - 8.7);
    read(intake(3), 123.0 - 8.7);
    ASSERT_TRUE(checkNow().has_value());
    EXPECT_EQ(checkNow()->springs, 3U);
    EXPECT_FALSE(checkNow()->alarms()) << "three are too few";
    read(intake(4), 124.0 - 8.7);
    EXPECT_TRUE(checkNow()->alarms());
    EXPECT_LE(checkNow()->score, -2.0);
    EXPECT_LT(checkNow()->shift.mean.inPoundsForce(), -1.0);
}

TEST_F(LiveAssessmentTest, TheFastPathAgreesWithTheFullFitNearTheTrend) {
    const EngineHistory history = historyOf(m_log);
    const SpringId spring = at(history, exhaust(3));
    const LiveAssessment live(history, {});
    for (const char* typed : {"120.5", "119.9", "120.9", "121.4"}) {
        const EngineHistory with =
            historyOf(withReading(m_log, exhaust(3), QString::fromLatin1(typed)));
        const auto quick = live.withReading(with, spring);
        const auto full = LiveAssessment(with, {}).onRecord(spring);
        ASSERT_TRUE(quick && full && quick->spring.loss && full->spring.loss);
        EXPECT_EQ(quick->spring.measuredLoss, full->spring.measuredLoss);
        // What the specification allows the integration itself (section 12, importance sampling).
        const ForceEstimate& one = *quick->spring.loss;
        const ForceEstimate& other = *full->spring.loss;
        EXPECT_NEAR(one.mean.inPoundsForce(), other.mean.inPoundsForce(), 0.06) << typed;
        EXPECT_NEAR(one.low90.inPoundsForce(), other.low90.inPoundsForce(), 0.12) << typed;
        EXPECT_NEAR(one.high90.inPoundsForce(), other.high90.inPoundsForce(), 0.12) << typed;
        EXPECT_EQ(quick->spring.standing, full->spring.standing);
    }
}

TEST_F(LiveAssessmentTest, AReadingFarBelowItsTrendIsFlaggedAtOnce) {
    const EngineHistory history = historyOf(m_log);
    const LiveAssessment live(history, {});
    const EngineHistory typed = historyOf(withReading(m_log, exhaust(3), QStringLiteral("112.0")));
    const auto spring = live.withReading(typed, at(history, exhaust(3)));
    ASSERT_TRUE(spring.has_value());
    EXPECT_TRUE(spring->spring.offTrend);
    EXPECT_EQ(spring->spring.standing, Standing::PastLimit) << "by measurement, the rule of record";
}

// A new spring at a place before it moves all lives by one.
TEST_F(LiveAssessmentTest, WhatWasSetAsideStaysSoWhenAnotherSpringIsPutIn) {
    for (Reading& reading : m_log.readings) {
        const bool misread =
            reading.place == exhaust(5) && reading.value.text().startsWith(QStringLiteral("123"));
        if (misread) {
            reading.value = *TypedForce::parse(QStringLiteral("135.0"), ForceUnit::PoundForce);
            break;
        }
    }
    const EngineHistory history = historyOf(m_log);
    const SpringId misread = at(history, exhaust(5));
    const LiveAssessment live(history, {});
    const auto before = live.onRecord(misread);
    ASSERT_TRUE(before && before->spring.events.size() == 1);
    EngineLog swapped = withReading(m_log, intake(1), QStringLiteral("122.0"));
    swapped.springs.push_back({SpringId::make(), QStringLiteral("New"), {}, {}, {}});
    swapped.readings.back().spring = swapped.springs.back().id;
    const EngineHistory typed = historyOf(swapped);
    ASSERT_EQ(typed.lives.size(), 17U);
    const auto after = live.withReading(typed, misread);
    ASSERT_TRUE(after.has_value());
    EXPECT_EQ(after->spring.events, before->spring.events);
}

TEST_F(LiveAssessmentTest, NothingIsSaidOfASpringThatIsNotFitted) {
    const EngineHistory history = historyOf(m_log);
    const LiveAssessment live(history, {});
    EXPECT_FALSE(live.onRecord(SpringId::make()).has_value());
    EXPECT_FALSE(live.withReading(history, SpringId::make()).has_value());
}

TEST_F(LiveAssessmentTest, TheSecondInspectionIsAnsweredThoughTheFirstAloneHadNoTrend) {
    HistoryBuilder builder = wearingSet(0, 0.3);
    const EngineLog first = builder.log();
    const EngineHistory history = historyOf(first);
    const SpringId spring = at(history, exhaust(3));
    const LiveAssessment live(history, {});
    const auto none = live.onRecord(spring);
    ASSERT_TRUE(none.has_value());
    EXPECT_FALSE(none->expected || none->spring.loss);
    const auto typed =
        live.withReading(historyOf(withReading(first, exhaust(3), QStringLiteral("122"))), spring);
    ASSERT_TRUE(typed && typed->spring.loss);
    EXPECT_TRUE(typed->spring.provisional);
}

} // namespace
} // namespace coilbook
