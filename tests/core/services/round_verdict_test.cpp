#include "core/services/round_verdict.h"
#include "tests/core/services/round_log.h"
#include "tests/support/printers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::place;
using testing::RoundLog;
using Fault = decltype(Error::fault);

// 5 lbf: common practice, no source.
constexpr Force kLimit = Force::poundsForce(5.0);

TypedForce lbf(const char* text) {
    return TypedForce::parse(QString::fromLatin1(text), ForceUnit::PoundForce).value();
}

RoundStop wornStop() {
    RoundStop stop;
    stop.baseline = RoundMean{Force::poundsForce(121.5), QDate(2026, 3, 1), 0};
    stop.previous = RoundMean{Force::poundsForce(118.0), QDate(2026, 4, 1), 4};
    return stop;
}

TEST(RoundVerdictTest, SaysNothingBeforeAnythingIsRead) {
    EXPECT_FALSE(verdictOf(wornStop(), kLimit).has_value());
}

TEST(RoundVerdictTest, AFirstReadingIsABaselineAndLosesNothing) {
    const auto verdict = verdictOf(RoundStop{}, kLimit, Force::poundsForce(121.5));
    ASSERT_TRUE(verdict.has_value());
    EXPECT_EQ(verdict->standing, MeasuredStanding::Baseline);
    EXPECT_FALSE(verdict->loss.has_value());
    EXPECT_FALSE(verdict->used.has_value());
}

TEST(RoundVerdictTest, FollowsTheValueAsItIsTyped) {
    const auto within = verdictOf(wornStop(), kLimit, Force::poundsForce(117.0));
    EXPECT_EQ(within->loss, Force::poundsForce(4.5));
    EXPECT_EQ(within->sincePrevious, Force::poundsForce(1.0));
    EXPECT_EQ(within->standing, MeasuredStanding::WithinLimit);
    EXPECT_DOUBLE_EQ(*within->used, 0.9);
    const auto past = verdictOf(wornStop(), kLimit, Force::poundsForce(116.5));
    EXPECT_EQ(past->standing, MeasuredStanding::PastLimit) << "exactly the limit counts";
}

TEST(RoundVerdictTest, FurtherHitsAreAveragedAndARetestReplacesThem) {
    RoundStop stop = wornStop();
    stop.hits.push_back({ReadingId::make(), 1, lbf("110.0"), false, false, false, {}});
    EXPECT_EQ(verdictOf(stop, kLimit, Force::poundsForce(118.0))->mean, Force::poundsForce(114.0));
    EXPECT_EQ(verdictOf(stop, kLimit, Force::poundsForce(118.0), true)->mean,
              Force::poundsForce(118.0));
    stop.hits.push_back({ReadingId::make(), 2, lbf("120.0"), true, false, false, {}});
    EXPECT_EQ(verdictOf(stop, kLimit, Force::poundsForce(90.0))->mean, Force::poundsForce(120.0))
        << "a plain hit beside a re-test does not count";
}

TEST(RoundVerdictTest, ACorrectionIsJudgedBeforeItIsKept) {
    RoundStop stop = wornStop();
    stop.hits.push_back({ReadingId::make(), 1, lbf("161.0"), false, false, false, {}});
    EXPECT_EQ(verdictWith(stop, kLimit, 0, lbf("116.0"))->standing, MeasuredStanding::PastLimit);
    EXPECT_FALSE(verdictWith(stop, kLimit, 0, std::nullopt).has_value());
}

TEST(RoundVerdictTest, RefusesWhatIsNoReading) {
    EXPECT_EQ(readingFromText(QStringLiteral("12x"), ForceUnit::PoundForce).error().fault,
              Fault(LogbookFault::NotAReading));
    EXPECT_EQ(readingFromText(QStringLiteral("0"), ForceUnit::PoundForce).error().fault,
              Fault(LogbookFault::ReadingOutOfBounds));
    EXPECT_EQ(readingFromText(QStringLiteral("1000.1"), ForceUnit::PoundForce).error().fault,
              Fault(LogbookFault::ReadingOutOfBounds));
    EXPECT_EQ(readingFromText(QStringLiteral("121,50"), ForceUnit::PoundForce)->text(),
              QStringLiteral("121.50"));
}

TEST(RoundVerdictTest, DoubtsAReadingAboveTheTesterOrFarFromTheSet) {
    Tester tester;
    tester.range = lbf("160");
    const Force median = Force::poundsForce(120.0);
    EXPECT_TRUE(doubtsOf(Force::poundsForce(132.0), &tester, median).empty());
    EXPECT_THAT(doubtsOf(Force::poundsForce(132.1), &tester, median),
                ::testing::ElementsAre(RoundDoubt::FarFromSet));
    EXPECT_THAT(doubtsOf(Force::poundsForce(107.9), nullptr, median),
                ::testing::ElementsAre(RoundDoubt::FarFromSet));
    EXPECT_THAT(doubtsOf(Force::poundsForce(160.5), &tester, std::nullopt),
                ::testing::ElementsAre(RoundDoubt::AboveTesterRange));
}

TEST(RoundVerdictTest, TheSummaryNamesWhatIsMissingAndWhatIsPast) {
    RoundLog maker;
    maker.inspect("2026-03-01", 0);
    maker.read(place(1, Valve::Intake), "a", "120");
    maker.read(place(1, Valve::Exhaust), "b", "120");
    const InspectionId now = maker.inspect("2026-04-01", 3, false);
    maker.read(place(1, Valve::Intake), "a", "115");
    maker.read(place(1, Valve::Exhaust), "b", "115.5");
    const Round round(maker.log, now, RoundOrder::ByCylinder);
    const RoundSummary summary = summaryOf(round, kLimit);
    EXPECT_EQ(summary.tested, 2U);
    EXPECT_EQ(summary.untested.size(), 14U);
    EXPECT_THAT(summary.pastLimit, ::testing::ElementsAre(0U));
}

} // namespace
} // namespace coilbook
