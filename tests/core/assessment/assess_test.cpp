#include "core/assessment/assessment.h"
#include "tests/support/history_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {
namespace {

using testing::At;
using testing::exhaust;
using testing::HistoryBuilder;
using testing::intake;

// The example of line_trend_test.cpp: rate 1 with standard error √0.1, 2 degrees of freedom.
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
    EXPECT_NEAR(spring.loss->mean.inPoundsForce(), 3.0, 1e-12);
    EXPECT_EQ(spring.trend.size(), 4U);
    EXPECT_EQ(spring.projection.size(), 4U);
    EXPECT_NEAR(spring.projection.back().mean.inPoundsForce(), 6.0, 1e-12);
}

// The line reaches 5 lbf at exposure x with probability p where 5/x = 1 − t(p, 2) √0.1; with
// t(0.9, 2) = 1.885618 (any printed table) that is x = 3.13, 5 and 12.38 for p = 0.1, 0.5 and 0.9;
// the spring has run 3 races.
TEST(AssessTest, RacesLeftAreWorkedFromTheStudentDistribution) {
    const SpringAssessment spring = only(kWorked);
    EXPECT_EQ(spring.racesLeft, (RacesLeft{1, 2, 10}));
    EXPECT_EQ(spring.standing, Standing::Due) << "3 races ahead hold the median";
    JudgingRules oneAhead;
    oneAhead.racesAhead = 1;
    EXPECT_EQ(only(kWorked, oneAhead).standing, Standing::Sound);
}

TEST(AssessTest, RacesSinceTheNewestInspectionCount) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", kWorked).race(4).race(5);
    const SpringAssessment spring = only(builder);
    EXPECT_EQ(spring.exposure, 5);
    EXPECT_EQ(spring.racesAtLatest, 3);
    EXPECT_NEAR(spring.loss->mean.inPoundsForce(), 5.0, 1e-12);
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(3.0));
    EXPECT_EQ(spring.standing, Standing::PastLimit);
    EXPECT_EQ(spring.pastBy, PastBy::Estimate);
}

TEST(AssessTest, AnEngineWithOneInspectionHasNoEstimates) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", {{0, "120"}}).race(1).race(2);
    const SpringAssessment spring = only(builder);
    EXPECT_EQ(spring.standing, Standing::NoTrend);
    EXPECT_EQ(spring.measuredLoss, Force());
    EXPECT_FALSE(spring.loss || spring.lossMeanOnly || spring.lossPerRace || spring.pPastLimit ||
                 spring.pDue || spring.racesLeft);
    EXPECT_TRUE(gives(spring, ReasonKind::BaselineOnly));
}

TEST(AssessTest, TwoInspectionsGiveMeansAndNoOdds) {
    const SpringAssessment spring = only({{0, "120"}, {2, "119"}});
    EXPECT_EQ(spring.lossMeanOnly, Force::poundsForce(1.0));
    EXPECT_EQ(spring.lossPerRaceMeanOnly, Force::poundsForce(0.5));
    EXPECT_FALSE(spring.loss || spring.pPastLimit || spring.pDue || spring.racesLeft);
    EXPECT_EQ(spring.standing, Standing::NoTrend);
    EXPECT_TRUE(gives(spring, ReasonKind::MeansOnly));
}

TEST(AssessTest, PastByMeasurementAloneAsksForAnotherTest) {
    const SpringAssessment two = only({{0, "120"}, {2, "115"}});
    EXPECT_EQ(two.standing, Standing::PastLimit);
    EXPECT_EQ(two.pastBy, PastBy::Measured);
    EXPECT_TRUE(gives(two, ReasonKind::TestAgainBeforeSwapping));

    const SpringAssessment oneLowHit =
        only({{0, "120.0"}, {1, "119.8"}, {2, "119.9"}, {3, "119.7"}, {4, "119.8"}, {5, "114.9"}});
    EXPECT_EQ(oneLowHit.pastBy, PastBy::Measured);
    EXPECT_TRUE(gives(oneLowHit, ReasonKind::TestAgainBeforeSwapping));
    EXPECT_TRUE(oneLowHit.offTrend);
    EXPECT_TRUE(gives(oneLowHit, ReasonKind::OffTrend));
}

TEST(AssessTest, PastByBothNeedsNoSecondTest) {
    const SpringAssessment spring = only({{0, "120.0"}, {1, "118.1"}, {2, "115.9"}, {3, "114.0"}});
    EXPECT_EQ(spring.pastBy, PastBy::Both);
    EXPECT_FALSE(gives(spring, ReasonKind::TestAgainBeforeSwapping));
    EXPECT_FALSE(gives(spring, ReasonKind::ReachesLimit));
}

TEST(AssessTest, TheMeanOfAllHitsIsTheReading) {
    const SpringAssessment spring = only({{0, "120"}, {0, "121"}, {1, "119"}, {1, "119.5"}});
    EXPECT_EQ(spring.inspections, 2);
    EXPECT_EQ(spring.baseline, Force::poundsForce(120.5));
    EXPECT_EQ(spring.measuredLoss, Force::poundsForce(1.25));
}

TEST(AssessTest, ASpringJustFittedHasLostNothing) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", {{0, "120"}, {1, "118"}, {2, "114"}});
    builder.spring(exhaust(3), "S-40", {{2, "122"}});
    const SpringAssessment spring = only(builder);
    EXPECT_EQ(spring.label, QStringLiteral("S-40"));
    EXPECT_EQ(spring.loss, ForceEstimate{});
    EXPECT_EQ(spring.pPastLimit, 0.0);
    EXPECT_FALSE(spring.lossPerRace || spring.pDue || spring.racesLeft);
    EXPECT_EQ(spring.standing, Standing::NoTrend);
    EXPECT_TRUE(gives(spring, ReasonKind::FittedNew));
}

TEST(AssessTest, ReadingsWithoutARaceInBetweenMakeNoTrendAndLeaveTheRawRule) {
    HistoryBuilder builder;
    builder.spring(exhaust(3), "S-27", {{0, "120"}, {0, "115", 1}}).race(1);
    const SpringAssessment spring = only(builder);
    EXPECT_FALSE(spring.loss || spring.pPastLimit);
    EXPECT_EQ(spring.pastBy, PastBy::Measured);
    EXPECT_TRUE(gives(spring, ReasonKind::FitFailed));
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
    EXPECT_NEAR(assessment.springs.front().lossPerRace->mean.inPoundsForce(), 0.5, 1e-12);
}

TEST(AssessTest, NothingYieldsNothing) {
    EXPECT_TRUE(assess(EngineHistory{}, {}).springs.empty());
    EXPECT_TRUE(assess(EngineHistory{}, {}).inspections.empty());
}

TEST(AssessTest, ShiftsAreNotToldYet) {
    HistoryBuilder builder;
    const Assessment assessment = assess(builder.spring(intake(1), "S-1", kWorked).build(), {});
    ASSERT_EQ(assessment.inspections.size(), 4U);
    for (const InspectionAssessment& inspection : assessment.inspections) {
        EXPECT_FALSE(inspection.shift.has_value());
        EXPECT_FALSE(inspection.shifted);
    }
    EXPECT_EQ(assessment.inspections[3].races, 3);
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
