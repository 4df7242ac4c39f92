#include "core/assessment/assessment.h"
#include "core/assessment/loss_chart.h"
#include "tests/support/history_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {
namespace {

using testing::At;
using testing::HistoryBuilder;
using testing::intake;

bool gives(const SpringAssessment& spring, ReasonKind kind) {
    return std::any_of(spring.reasons.begin(), spring.reasons.end(),
                       [&](const Reason& reason) { return reason.kind == kind; });
}

/// Eight springs read after every race for five races; the eighth reads `last` in the end.
HistoryBuilder eightSprings(const char* last = "118.5") {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        builder.spring(intake(cylinder), ("I" + QByteArray::number(cylinder)).constData(),
                       {{0, "120.0"},
                        {1, "119.5"},
                        {2, "119.5"},
                        {3, "119.0"},
                        {4, "119.0"},
                        {5, cylinder == 8 ? last : "118.5"}});
    }
    return builder;
}

SpringAssessment eighth(HistoryBuilder builder) {
    return assess(builder.build(), {}).springs.at(7);
}

TEST(UsersSayAssessTest, AConfirmedDropIsPartOfTheLossAndADeniedOneIsNot) {
    HistoryBuilder builder = eightSprings("112.5");
    const SpringAssessment pending = eighth(builder);
    ASSERT_TRUE(gives(pending, ReasonKind::PendingDrop));

    builder.decide("I8", 5, ReadingJudgement::DropConfirmed);
    const SpringAssessment confirmed = eighth(builder);
    ASSERT_EQ(confirmed.events.size(), 1U);
    EXPECT_EQ(confirmed.events[0], (EventFinding{EventFinding::Kind::Drop, 5, 1.0, true}));
    EXPECT_TRUE(gives(confirmed, ReasonKind::DropConfirmed));
    EXPECT_EQ(confirmed.pastBy, PastBy::Both);

    builder.decide("I8", 5, ReadingJudgement::DropDenied);
    const SpringAssessment denied = eighth(builder);
    EXPECT_EQ(denied.events.at(0), (EventFinding{EventFinding::Kind::Misread, 5, 0.0, true}));
    EXPECT_TRUE(gives(denied, ReasonKind::DropDenied));
    EXPECT_FALSE(gives(denied, ReasonKind::OffTrend)) << "it was tested again already";
    EXPECT_EQ(denied.pastBy, PastBy::Measured) << "the rule of record stays";
    EXPECT_EQ(denied.measuredLoss, Force::poundsForce(7.5));
    EXPECT_LT(denied.loss->mean, confirmed.loss->mean - Force::poundsForce(3.0));

    builder.decide("I8", 5, ReadingJudgement::LeftToModel);
    const SpringAssessment again = eighth(builder);
    EXPECT_EQ(again.events, pending.events) << "taken back";
    EXPECT_EQ(again.loss, pending.loss);
}

TEST(UsersSayAssessTest, AReadingIsSetAsideOrKeptAsTheUserSays) {
    HistoryBuilder builder = eightSprings();
    const SpringAssessment before = eighth(builder);
    EXPECT_TRUE(before.events.empty());
    builder.decide("I8", 2, ReadingJudgement::SetAside);
    const SpringAssessment aside = eighth(builder);
    EXPECT_EQ(aside.events.at(0), (EventFinding{EventFinding::Kind::Misread, 2, 0.0, true}));
    EXPECT_TRUE(gives(aside, ReasonKind::SetAsideByUser));

    HistoryBuilder slip = eightSprings("138.5"); // a slip upward: misread for sure
    EXPECT_TRUE(gives(eighth(slip), ReasonKind::MisreadSetAside));
    slip.decide("I8", 5, ReadingJudgement::Kept);
    const SpringAssessment kept = eighth(slip);
    for (const EventFinding& event : kept.events) {
        EXPECT_NE(event.inspection, 5U) << "the reading that is kept bears no event";
    }
    EXPECT_TRUE(gives(kept, ReasonKind::ReadingKept));
}

TEST(UsersSayAssessTest, TheMeasuredLossStartsAgainAfterALevelChange) {
    HistoryBuilder builder;
    builder.spring(intake(1), "S-1",
                   {{0, "121.5"}, {1, "121.0"}, {2, "128.0"}, {3, "127.5"}, {4, "127.0"}});
    builder.spring(intake(2), "S-2",
                   {{0, "120.5"}, {1, "120.0"}, {2, "119.5"}, {3, "119.0"}, {4, "118.5"}});
    builder.levelChange("S-1", 1, 2);
    const EngineHistory history = builder.build();
    const Assessment assessment = assess(history, {});
    const SpringAssessment& spring = assessment.springs.front();
    // 121.5 - 121.0 before the shim, 128.0 - 127.0 after it.
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(1.5));
    EXPECT_EQ(spring.baseline, Force::poundsForce(121.5));
    EXPECT_EQ(spring.latest, Force::poundsForce(127.0));
    const Reason expected{ReasonKind::MeasuredAnew,
                          {Force::poundsForce(0.5)},
                          {2, static_cast<int>(LevelChangeKind::Shim)}};
    EXPECT_NE(std::find(spring.reasons.begin(), spring.reasons.end(), expected),
              spring.reasons.end());
    EXPECT_TRUE(spring.events.empty()) << "no drop and no misread: it is accounted for";

    const LossChart chart = lossChartOf(history, assessment, spring);
    EXPECT_EQ(chart.readings[1].loss, Force::poundsForce(0.5));
    EXPECT_EQ(chart.readings[2].loss, Force::poundsForce(0.5));
    EXPECT_EQ(chart.readings[4].loss, Force::poundsForce(1.5));
    ASSERT_EQ(chart.marks.size(), 1U);
    EXPECT_EQ(chart.marks[0].kind, LossChart::Mark::Kind::LevelChange);
    EXPECT_EQ(chart.marks[0].races, 1.0);
    EXPECT_TRUE(lossChartOf(history, assessment, assessment.springs[1]).marks.empty());
}

/// Eight springs that lose half a pound a race; the third got a shim worth `step` after two races.
EngineHistory shimmed(double step) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        std::vector<At> readings;
        for (int races = 0; races <= 6; ++races) {
            const double added = cylinder == 3 && races >= 3 ? step : 0.0;
            const double lbf = 120.0 + cylinder + added - 0.5 * races;
            readings.push_back({races, QString::number(lbf, 'f', 1).toStdString()});
        }
        builder.spring(intake(cylinder), ("I" + QByteArray::number(cylinder)).constData(),
                       readings);
    }
    return builder.levelChange("I3", 2, 1).build();
}

// The pressure that a shim adds is no part of the loss, however much it is (section 7).
TEST(UsersSayAssessTest, ALoggedStepLeavesTheEstimateAsItIsWithoutTheStep) {
    const auto lossWith = [](double step) {
        return assess(shimmed(step), {}).springs.at(2).loss->mean.inPoundsForce();
    };
    // The column's prior is flat (SD 100), not improper: 8 lbf move it by a trace.
    EXPECT_NEAR(lossWith(8.0), lossWith(0.0), 0.02);
    EXPECT_NEAR(lossWith(-4.0), lossWith(0.0), 0.02);
}

TEST(UsersSayAssessTest, CorrectedReadingsHaveTheStepTakenOut) {
    const EngineHistory history = shimmed(8.0);
    const Assessment assessment = assess(history, {});
    const LossChart chart = lossChartOf(history, assessment, assessment.springs.at(2));
    const LossChart twin = lossChartOf(history, assessment, assessment.springs.at(4));
    for (std::size_t i = 0; i < chart.readings.size(); ++i) {
        // Beside the step it reads like its neighbour, to less than a graduation.
        EXPECT_NEAR(chart.readings[i].corrected->inPoundsForce(),
                    twin.readings[i].corrected->inPoundsForce(), 0.4);
    }
}

TEST(UsersSayAssessTest, LapsThatAreEqualInAllRacesGiveTheSameAnswerAsRaces) {
    HistoryBuilder byRaces = eightSprings();
    HistoryBuilder byLaps = eightSprings();
    byLaps.byLaps();
    for (int race = 1; race <= 6; ++race) { // one race since the newest inspection
        byRaces.race(race, {}, 40);
        byLaps.race(race, {}, 40);
    }
    const Assessment one = assess(byRaces.build(), {});
    const Assessment other = assess(byLaps.build(), {});
    for (std::size_t i = 0; i < one.springs.size(); ++i) {
        EXPECT_NEAR((one.springs[i].loss->mean - other.springs[i].loss->mean).inPoundsForce(), 0.0,
                    1e-9);
        EXPECT_EQ(one.springs[i].reasons.size(), other.springs[i].reasons.size());
    }
    HistoryBuilder gap = eightSprings();
    gap.byLaps().race(6);
    EXPECT_TRUE(gives(eighth(gap), ReasonKind::LapsMissing));
}

TEST(UsersSayAssessTest, RunningWearsTheSpringsAndLeavesTheCountOfRaces) {
    HistoryBuilder builder = eightSprings();
    const SpringAssessment before = eighth(builder);
    builder.running(5, 2, {}, 2500);
    const EngineHistory history = builder.build();
    EXPECT_EQ(history.asOf, HistoryBuilder::dayOf(5, 2)) << "it is the newest recorded day";
    const Assessment assessment = assess(history, {});
    const SpringAssessment& after = assessment.springs.at(7);
    EXPECT_EQ(assessment.racesNow, 5);
    EXPECT_EQ(after.exposure, 5);
    // Two and a half mean races at its rate.
    EXPECT_NEAR((after.loss->mean - before.loss->mean).inPoundsForce(),
                2.5 * before.lossPerRace->mean.inPoundsForce(), 1e-6);
    EXPECT_EQ(after.reasons.front().counts, (std::vector<std::optional<int>>{5, 2500}));
    const LossChart chart = lossChartOf(history, assessment, after);
    ASSERT_EQ(chart.marks.size(), 1U);
    EXPECT_EQ(chart.marks[0].kind, LossChart::Mark::Kind::Running);
    EXPECT_EQ(chart.estimate.back().mean, after.loss->mean);
    EXPECT_EQ(chart.projection.front().races, 5.0);
}

} // namespace
} // namespace coilbook
