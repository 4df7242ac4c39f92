#include "core/assessment/assessment.h"
#include "tests/support/history_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace coilbook {
namespace {

using testing::At;
using testing::exhaust;
using testing::HistoryBuilder;
using testing::intake;

const std::vector<At> kWorked{{0, "120.5"}, {1, "118.5"}, {2, "117.5"}, {3, "117.5"}};

SpringAssessment only(HistoryBuilder& builder, const JudgingRules& rules = {}) {
    const Assessment assessment = assess(builder.build(), rules);
    EXPECT_EQ(assessment.springs.size(), 1U);
    return assessment.springs.at(0);
}

SpringAssessment only(const std::vector<At>& readings, const JudgingRules& rules = {}) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", readings);
    return only(builder, rules);
}

bool gives(const SpringAssessment& spring, ReasonKind kind) {
    return std::any_of(spring.reasons.begin(), spring.reasons.end(),
                       [&](const Reason& reason) { return reason.kind == kind; });
}

TEST(AssessTest, ARegularSpringHasItsRecordItsEstimateAndItsProjection) {
    const SpringAssessment spring = only(kWorked);
    EXPECT_EQ(spring.inspections, 4);
    EXPECT_EQ(spring.exposure, 3);
    EXPECT_EQ(spring.racesAtLatest, 3);
    EXPECT_EQ(spring.latestOn, HistoryBuilder::dayOf(3));
    EXPECT_EQ(spring.baseline, Force::poundsForce(120.5));
    EXPECT_EQ(spring.latest, Force::poundsForce(117.5));
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(3.0));
    ASSERT_TRUE(spring.loss && spring.lossPerRace && spring.pPastLimit && spring.racesLeft);
    EXPECT_FALSE(spring.provisional);
    ASSERT_EQ(spring.trend.size(), 4U);
    EXPECT_EQ(spring.trend.front(), (TrendPoint{0.0, {}, {}, {}})) << "nothing is lost at first";
    ASSERT_EQ(spring.projection.size(), 4U);
    EXPECT_EQ(spring.projection.front(), spring.trend.back());
    EXPECT_EQ(spring.projection.front().mean, spring.loss->mean);
    EXPECT_NEAR(spring.projection.back().mean.inPoundsForce(),
                spring.loss->mean.inPoundsForce() + 3.0 * spring.lossPerRace->mean.inPoundsForce(),
                1e-9);
}

/// Sixteen springs that lose `perRace` a race over six inspections, read to half a pound. Nothing
/// but the rule of reading is random about them: springs differ by their start and by a fixed
/// pattern of errors.
HistoryBuilder regularSet(double perRace) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        for (const Place& place : {intake(cylinder), exhaust(cylinder)}) {
            std::vector<At> readings;
            for (int races = 0; races <= 5; ++races) {
                const double error = 0.5 * ((cylinder + races * races) % 3 - 1);
                readings.push_back(
                    {races,
                     QString::number(
                         std::round(2.0 * (120.0 + cylinder + error - perRace * races)) / 2.0, 'f',
                         1)
                         .toStdString()});
            }
            const QByteArray label =
                QByteArray(place.valve == Valve::Intake ? "I" : "E") + QByteArray::number(cylinder);
            builder.spring(place, label.constData(), readings);
        }
    }
    return builder;
}

// Contract, section 4: races_left are where the running maximum of the odds passes 0.1, 0.5 and
// 0.9; p_due is that maximum at the races ahead; due from one half on.
TEST(AssessTest, RacesLeftAndStandingFollowFromTheOdds) {
    const EngineHistory history = regularSet(0.6).build();
    const Assessment now = assess(history, {});
    for (int ahead = 0; ahead <= 12; ++ahead) {
        JudgingRules rules;
        rules.racesAhead = ahead;
        const Assessment assessment = assess(history, rules);
        for (std::size_t i = 0; i < assessment.springs.size(); ++i) {
            const SpringAssessment& spring = assessment.springs[i];
            ASSERT_TRUE(spring.pDue && now.springs[i].racesLeft);
            const RacesLeft& left = *now.springs[i].racesLeft;
            EXPECT_EQ(*spring.pDue >= 0.1, left.p10 && *left.p10 <= ahead);
            EXPECT_EQ(*spring.pDue >= 0.5, left.median && *left.median <= ahead);
            EXPECT_EQ(*spring.pDue >= 0.9, left.p90 && *left.p90 <= ahead);
            if (spring.standing != Standing::PastLimit) {
                EXPECT_EQ(spring.standing == Standing::Due, *spring.pDue >= 0.5);
            }
        }
    }
}

// Exposure, loss and odds refer to today's count (contract, section 4): what was projected two
// races ahead is what is lost after two more races.
TEST(AssessTest, RacesSinceTheNewestInspectionCount) {
    const Assessment before = assess(regularSet(0.6).build(), {});
    HistoryBuilder builder = regularSet(0.6);
    const Assessment after = assess(builder.race(6).race(7).build(), {});
    for (std::size_t i = 0; i < after.springs.size(); ++i) {
        const SpringAssessment& spring = after.springs[i];
        EXPECT_EQ(spring.exposure, 7);
        EXPECT_EQ(spring.racesAtLatest, 5);
        EXPECT_EQ(spring.measuredLoss, before.springs[i].measuredLoss);
        const TrendPoint& projected = before.springs[i].projection.at(2);
        ASSERT_TRUE(spring.loss.has_value());
        EXPECT_NEAR(spring.loss->mean.inPoundsForce(), projected.mean.inPoundsForce(), 1e-6);
        EXPECT_NEAR(spring.loss->low90.inPoundsForce(), projected.low90.inPoundsForce(), 1e-6);
        EXPECT_NEAR(spring.loss->high90.inPoundsForce(), projected.high90.inPoundsForce(), 1e-6);
    }
}

TEST(AssessTest, AnEngineWithOneInspectionHasNoEstimates) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", {{0, "120"}}).race(1).race(2);
    const SpringAssessment spring = only(builder);
    EXPECT_EQ(spring.standing, Standing::NoTrend);
    EXPECT_EQ(spring.measuredLoss, Force());
    EXPECT_FALSE(spring.loss || spring.lossPerRace || spring.pPastLimit || spring.pDue ||
                 spring.racesLeft);
    EXPECT_TRUE(gives(spring, ReasonKind::BaselineOnly));
}

TEST(AssessTest, TwoInspectionsGiveAProvisionalEstimate) {
    const SpringAssessment spring = only({{0, "120"}, {2, "119"}});
    EXPECT_TRUE(spring.loss && spring.lossPerRace && spring.pPastLimit && spring.pDue);
    EXPECT_TRUE(spring.provisional);
    EXPECT_EQ(spring.standing, Standing::Sound);
    EXPECT_TRUE(gives(spring, ReasonKind::LossAndRate));
    EXPECT_TRUE(gives(spring, ReasonKind::Provisional));
    EXPECT_FALSE(gives(only(kWorked), ReasonKind::Provisional));
}

SpringAssessment ofSet(HistoryBuilder& builder, const Place& place) {
    const Assessment assessment = assess(builder.build(), {});
    for (const SpringAssessment& spring : assessment.springs) {
        if (spring.place == place) {
            return spring;
        }
    }
    ADD_FAILURE() << "no spring there";
    return {};
}

// One baseline that was read 15 lbf too high would otherwise swap a healthy spring for good.
TEST(AssessTest, PastByMeasurementAloneAsksForAnotherTest) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 7; ++cylinder) {
        builder.spring(
            intake(cylinder), ("I" + QByteArray::number(cylinder)).constData(),
            {{0, "120.0"}, {1, "119.5"}, {2, "119.5"}, {3, "119.0"}, {4, "119.0"}, {5, "118.5"}});
    }
    builder.spring(
        intake(8), "I8",
        {{0, "135.0"}, {1, "119.5"}, {2, "119.5"}, {3, "119.0"}, {4, "119.0"}, {5, "118.5"}});
    const SpringAssessment spring = ofSet(builder, intake(8));
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(16.5)) << "the rule of record stays";
    EXPECT_EQ(spring.standing, Standing::PastLimit);
    EXPECT_EQ(spring.pastBy, PastBy::Measured);
    EXPECT_TRUE(gives(spring, ReasonKind::TestAgainBeforeSwapping));
    ASSERT_EQ(spring.events.size(), 1U);
    EXPECT_EQ(spring.events[0].kind, EventFinding::Kind::Misread);
    EXPECT_EQ(spring.events[0].inspection, 0U);
    EXPECT_TRUE(gives(spring, ReasonKind::MisreadSetAside));
}

TEST(AssessTest, ANewestReadingFarBelowItsTrendIsPendingUntilTheReTest) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        builder.spring(intake(cylinder), ("I" + QByteArray::number(cylinder)).constData(),
                       {{0, "120.0"},
                        {1, "119.5"},
                        {2, "119.5"},
                        {3, "119.0"},
                        {4, "119.0"},
                        {5, cylinder == 8 ? "112.5" : "118.5"}});
    }
    const SpringAssessment spring = ofSet(builder, intake(8));
    EXPECT_TRUE(spring.offTrend);
    ASSERT_EQ(spring.events.size(), 1U);
    EXPECT_EQ(spring.events[0].kind, EventFinding::Kind::PendingDrop);
    EXPECT_GT(spring.events[0].dropProbability, 0.0);
    EXPECT_LT(spring.events[0].dropProbability, 1.0);
    EXPECT_TRUE(gives(spring, ReasonKind::PendingDrop));
    EXPECT_FALSE(ofSet(builder, intake(3)).offTrend);
}

TEST(AssessTest, PastByBothNeedsNoSecondTest) {
    HistoryBuilder builder = regularSet(1.6);
    for (const SpringAssessment& spring : assess(builder.build(), {}).springs) {
        EXPECT_EQ(spring.pastBy, PastBy::Both);
        EXPECT_FALSE(gives(spring, ReasonKind::TestAgainBeforeSwapping));
        EXPECT_FALSE(gives(spring, ReasonKind::ReachesLimit));
    }
}

TEST(AssessTest, TheMeanOfAllHitsIsTheReading) {
    const SpringAssessment spring = only({{0, "120"}, {0, "121"}, {1, "119"}, {1, "119.5"}});
    EXPECT_EQ(spring.inspections, 2);
    EXPECT_EQ(spring.baseline, Force::poundsForce(120.5));
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(1.25));
}

// Contract, section 4: 'loss 0 with bounds 0, p_past_limit 0, the rest as the engine's other
// springs suggest'.
TEST(AssessTest, ASpringJustFittedHasLostNothing) {
    HistoryBuilder builder = regularSet(0.4);
    builder.spring(exhaust(3), "S-40", {{5, "122"}});
    const SpringAssessment spring = ofSet(builder, exhaust(3));
    EXPECT_EQ(spring.label, QStringLiteral("S-40"));
    EXPECT_EQ(spring.loss, ForceEstimate{});
    EXPECT_EQ(spring.pPastLimit, 0.0);
    EXPECT_TRUE(spring.lossPerRace && spring.pDue && spring.racesLeft);
    EXPECT_GT(spring.racesLeft->median, 3) << "others lose 0.4 a race";
    EXPECT_EQ(spring.standing, Standing::NoTrend);
    EXPECT_TRUE(gives(spring, ReasonKind::FittedNew));
}

TEST(AssessTest, ASpringFittedNewToAFastWearingEngineMayBeDueAtOnce) {
    HistoryBuilder builder = regularSet(1.6);
    builder.spring(exhaust(3), "S-40", {{5, "122"}});
    JudgingRules far;
    far.racesAhead = 10;
    const Assessment assessment = assess(builder.build(), far);
    const auto fresh = std::find_if(assessment.springs.begin(), assessment.springs.end(),
                                    [](const auto& spring) { return spring.exposure == 0; });
    ASSERT_NE(fresh, assessment.springs.end());
    EXPECT_EQ(fresh->standing, Standing::Due);
}

TEST(AssessTest, ReadingsWithoutARaceInBetweenLeaveTheRuleOfRecord) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", {{0, "120"}, {0, "115", 1}}).race(1);
    const SpringAssessment spring = only(builder);
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(5.0));
    EXPECT_EQ(spring.standing, Standing::PastLimit);
    EXPECT_EQ(spring.pastBy, PastBy::Measured) << "one race does not wear a spring down";
    EXPECT_TRUE(gives(spring, ReasonKind::TestAgainBeforeSwapping));
}

TEST(AssessTest, ASpringThatWasNeverReadIsThereWithoutNumbers) {
    testing::LogBuilder log;
    log.fit(intake(1), QStringLiteral("S-1"), HistoryBuilder::dayOf(0), 0);
    log.inspection(HistoryBuilder::dayOf(1), 1);
    log.reading(exhaust(3), QStringLiteral("S-27"), QStringLiteral("120"));
    const Assessment assessment = assess(historyOf(log.log()), {});
    ASSERT_EQ(assessment.springs.size(), 2U);
    const SpringAssessment& spring = assessment.springs.front();
    EXPECT_TRUE(spring.latestOn.isNull());
    EXPECT_FALSE(spring.baseline || spring.latest || spring.measuredLoss || spring.loss);
    EXPECT_EQ(spring.standing, Standing::NoTrend);
    EXPECT_TRUE(gives(spring, ReasonKind::NeverRead));
}

TEST(AssessTest, ExposureCountsOnlyRacesRunWhileFitted) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", {{0, "120"}, {2, "119"}, {8, "119"}, {10, "118"}});
    builder.spring(exhaust(3), "S-40", {{2, "122"}, {8, "121"}});
    const EngineHistory history = builder.build();
    const Assessment assessment = assess(history, {});
    ASSERT_EQ(assessment.springs.size(), 1U);
    EXPECT_EQ(assessment.springs.front().label, QStringLiteral("S-27"));
    EXPECT_EQ(assessment.springs.front().exposure, 4);
    EXPECT_EQ(assessment.springs.front().trend.back().exposure, 4.0);
}

TEST(AssessTest, NothingYieldsNothing) {
    EXPECT_TRUE(assess(EngineHistory{}, {}).springs.empty());
    EXPECT_TRUE(assess(EngineHistory{}, {}).inspections.empty());
}

// A tester that reads low once comes back; wear does not (contract, section 4, 'shifted').
TEST(AssessTest, AnInspectionThatReadsLowOnAllSpringsIsFlagged) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        for (const Place& place : {intake(cylinder), exhaust(cylinder)}) {
            std::vector<At> readings;
            for (int races = 0; races <= 7; ++races) {
                const double low = races == 4 ? 5.0 : 0.0;
                const double error = 0.5 * ((cylinder + races) % 2);
                readings.push_back(
                    {races, QString::number(120.0 + error - low, 'f', 1).toStdString()});
            }
            builder.spring(
                place,
                ((place.valve == Valve::Intake ? "I" : "E") + QByteArray::number(cylinder))
                    .constData(),
                readings);
        }
    }
    const Assessment assessment = assess(builder.build(), {});
    ASSERT_EQ(assessment.inspections.size(), 8U);
    for (const InspectionAssessment& inspection : assessment.inspections) {
        ASSERT_TRUE(inspection.shift.has_value());
        EXPECT_EQ(inspection.shifted, inspection.races == 4) << inspection.races;
    }
    EXPECT_NEAR(assessment.inspections[4].shift->mean.inPoundsForce(), -5.0, 1.0);
}

TEST(AssessTest, TheNewestInspectionIsCheckedAgainstTheEarlierOnes) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        builder.spring(intake(cylinder), ("I" + QByteArray::number(cylinder)).constData(),
                       {{0, "120.0"},
                        {1, "119.5"},
                        {2, "119.5"},
                        {3, "119.0"},
                        {4, "119.0"},
                        {5, "119.0"},
                        {6, "118.5"},
                        {7, "112.0"}});
    }
    const Assessment assessment = assess(builder.build(), {});
    EXPECT_TRUE(assessment.inspections.back().shifted);
    EXPECT_LT(assessment.inspections.back().shift->mean, Force::poundsForce(-1.0));
    EXPECT_FALSE(assessment.inspections.front().shifted) << "the first is never flagged";
}

TEST(AssessTest, CurvesAreLeftOutWhereNobodyDrawsThem) {
    HistoryBuilder builder = regularSet(0.6);
    const EngineHistory history = builder.build();
    Assessment drawn = assess(history, {});
    for (SpringAssessment& spring : drawn.springs) {
        EXPECT_FALSE(spring.trend.empty());
        EXPECT_TRUE(spring.fittedBaseline.has_value());
        spring.fittedBaseline.reset();
        spring.trend.clear();
        spring.projection.clear();
    }
    EXPECT_EQ(assess(history, {}, Curves::None), drawn) << "nothing else differs";
}

TEST(AssessTest, OneInspectionHasNoShift) {
    HistoryBuilder builder;
    const Assessment assessment =
        assess(builder.spring(intake(1), "S-1", {{0, "120"}}).build(), {});
    EXPECT_FALSE(assessment.inspections.at(0).shift.has_value());
    EXPECT_FALSE(assessment.inspections.at(0).shifted);
}

// Sixteen springs: common practice, no source.
TEST(AssessTest, SpringsComeByCylinderIntakeFirst) {
    HistoryBuilder builder;
    for (int cylinder = 8; cylinder >= 1; --cylinder) {
        const QByteArray number = QByteArray::number(cylinder);
        builder.spring(exhaust(cylinder), ("E" + number).constData(), {{0, "120"}});
        builder.spring(intake(cylinder), ("I" + number).constData(), {{0, "120"}});
    }
    const Assessment assessment = assess(builder.build(), {});
    ASSERT_EQ(assessment.springs.size(), 16U);
    for (std::size_t i = 0; i < 16; ++i) {
        const int cylinder = static_cast<int>(i / 2) + 1;
        EXPECT_EQ(assessment.springs[i].place, i % 2 == 0 ? intake(cylinder) : exhaust(cylinder));
    }
}

} // namespace
} // namespace coilbook
