#include "core/domain/history.h"
#include "core/services/swap.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const testing::FixedClock kClock{QDate(2026, 5, 3)};
const QDate kSecond(2026, 5, 2);

LogBuilder twoInspections() {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 1), 0);
    builder.reading(exhaust(3), QStringLiteral("S-06"), QStringLiteral("121.5"));
    builder.reading(intake(3), QStringLiteral("S-05"), QStringLiteral("120.0"));
    builder.inspection(kSecond, 4);
    builder.reading(exhaust(3), QStringLiteral("S-06"), QStringLiteral("116.0"));
    builder.reading(intake(3), QStringLiteral("S-05"), QStringLiteral("119.0"));
    return builder;
}

SwapEntry entryFor(const QString& label) {
    SwapEntry entry;
    entry.place = exhaust(3);
    entry.label = label;
    entry.on = kSecond;
    entry.races = 4;
    return entry;
}

LogbookFault faultOf(const SwapProblem& problem) {
    return std::get<LogbookFault>(problem.error.fault);
}

/// The single problem of an entry; fails the test when there are none or several.
SwapProblem onlyProblem(const EngineLog& log, const SwapEntry& entry) {
    const auto result = swapOf(log, entry, kClock);
    EXPECT_FALSE(result.has_value());
    if (result.has_value()) {
        return {};
    }
    EXPECT_EQ(result.error().size(), 1U);
    return result.error().front();
}

TEST(SwapTest, IsPrefilledFromTheNewestInspectionAndCountsTheLabelOn) {
    LogBuilder builder = twoInspections();
    builder.spring(QStringLiteral("S-16"));
    const SwapPrefill prefill = swapPrefill(builder.log(), exhaust(3));
    ASSERT_TRUE(prefill.outgoing.has_value());
    EXPECT_EQ(prefill.outgoing->label, QStringLiteral("S-06"));
    EXPECT_EQ(prefill.label, QStringLiteral("S-17"));
    EXPECT_EQ(prefill.on, kSecond);
    EXPECT_EQ(prefill.races, 4);
}

TEST(SwapTest, ProposesALabelThatKeepsLeadingZerosOrStartsACount) {
    LogBuilder builder;
    builder.inspection(kSecond, 0);
    builder.reading(intake(1), QStringLiteral("A07"), QStringLiteral("120"));
    builder.reading(intake(2), QStringLiteral("blue"), QStringLiteral("120"));
    EXPECT_EQ(swapPrefill(builder.log(), intake(1)).label, QStringLiteral("A08"));
    EXPECT_EQ(swapPrefill(builder.log(), intake(2)).label, QStringLiteral("blue-2"));
    EXPECT_EQ(swapPrefill(builder.log(), exhaust(5)).outgoing, std::nullopt);
}

TEST(SwapTest, FitsANewSpringWithItsPartAndBatch) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral(" S-17 "));
    entry.part = QStringLiteral("dual 1.55");
    entry.batch = QStringLiteral("B4");
    entry.reason = QStringLiteral("past the limit");
    const auto swap = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(swap.has_value());
    ASSERT_TRUE(swap->newSpring.has_value());
    EXPECT_EQ(swap->newSpring->label, QStringLiteral("S-17"));
    EXPECT_EQ(swap->newSpring->part, QStringLiteral("dual 1.55"));
    EXPECT_EQ(swap->newSpring->batch, QStringLiteral("B4"));
    EXPECT_EQ(swap->fitting.spring, swap->newSpring->id);
    EXPECT_EQ(swap->fitting.place, exhaust(3));
    EXPECT_EQ(swap->fitting.engineRaces, 4);
    EXPECT_EQ(swap->fitting.reason, QStringLiteral("past the limit"));
    EXPECT_TRUE(swap->baseline.empty());
    EXPECT_FALSE(swap->newInspection.has_value());
    EXPECT_FALSE(swap->newSitting.has_value());
}

TEST(SwapTest, EndsTheOldFittingWhenItsChangeIsInTheLog) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral("S-17"));
    entry.on = QDate(2026, 5, 3);
    const auto swap = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(swap.has_value());
    EngineLog log = builder.log();
    log.springs.push_back(*swap->newSpring);
    log.fittings.push_back(swap->fitting);
    const SwapPrefill next = swapPrefill(log, exhaust(3));
    ASSERT_TRUE(next.outgoing.has_value());
    EXPECT_EQ(next.outgoing->label, QStringLiteral("S-17"));
    const std::vector<Spring> shelf = springsOnTheShelf(log);
    ASSERT_EQ(shelf.size(), 1U);
    EXPECT_EQ(shelf.front().label, QStringLiteral("S-06"));

    log.fittings.back().withdrawn = true;
    EXPECT_EQ(swapPrefill(log, exhaust(3)).outgoing->label, QStringLiteral("S-06"));
}

TEST(SwapTest, TakesASpringFromTheShelfByItsLabelAndKeepsItsFacts) {
    LogBuilder builder = twoInspections();
    const SpringId shelved = builder.spring(QStringLiteral("S-40"));
    SwapEntry entry = entryFor(QStringLiteral("S-40"));
    entry.part = QStringLiteral("ignored");
    const auto swap = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(swap.has_value());
    EXPECT_FALSE(swap->newSpring.has_value());
    EXPECT_EQ(swap->fitting.spring, shelved);
}

TEST(SwapTest, PutsTheBaselineIntoTheInspectionOfThatDay) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral("S-17"));
    entry.hits = {QStringLiteral("122.5"), QString(), QStringLiteral(" 122,0")};
    const auto swap = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(swap.has_value());
    EXPECT_FALSE(swap->newInspection.has_value());
    EXPECT_FALSE(swap->newSitting.has_value());
    ASSERT_EQ(swap->baseline.size(), 2U);
    EXPECT_EQ(swap->baseline[0].sitting, builder.log().sittings.back().id);
    EXPECT_EQ(swap->baseline[0].hit, 1);
    EXPECT_EQ(swap->baseline[1].hit, 2);
    EXPECT_EQ(swap->baseline[1].value.text(), QStringLiteral("122.0"));
    EXPECT_EQ(swap->baseline[1].author.at, kClock.now());
    EXPECT_EQ(swap->baseline[1].place, exhaust(3));
}

TEST(SwapTest, StartsASittingForAnotherTesterAndAnInspectionForAnotherDay) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral("S-17"));
    entry.hits = {QStringLiteral("545")};
    entry.unit = ForceUnit::Newton;
    entry.inspector = QStringLiteral("second hand");
    const auto sameDay = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(sameDay.has_value());
    EXPECT_FALSE(sameDay->newInspection.has_value());
    ASSERT_TRUE(sameDay->newSitting.has_value());
    EXPECT_EQ(sameDay->newSitting->inspection, builder.log().inspections.back().id);

    entry.on = QDate(2026, 5, 3);
    const auto nextDay = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(nextDay.has_value());
    ASSERT_TRUE(nextDay->newInspection.has_value());
    EXPECT_TRUE(nextDay->newInspection->closed);
    EXPECT_EQ(nextDay->newSitting->inspection, nextDay->newInspection->id);
    EXPECT_EQ(nextDay->baseline.front().sitting, nextDay->newSitting->id);
    EXPECT_EQ(nextDay->baseline.front().value.unit(), ForceUnit::Newton);
}

TEST(SwapTest, RefusesALabelThatIsEmptyFittedOrDiffersInCaseOnly) {
    LogBuilder builder = twoInspections();
    builder.spring(QStringLiteral("Spare"));
    SwapProblem problem = onlyProblem(builder.log(), entryFor(QStringLiteral("  ")));
    EXPECT_EQ(problem.field, SwapField::Label);
    EXPECT_EQ(faultOf(problem), LogbookFault::EmptyName);
    problem = onlyProblem(builder.log(), entryFor(QStringLiteral("S-05")));
    EXPECT_EQ(faultOf(problem), LogbookFault::SpringFitted);
    EXPECT_EQ(problem.error.arguments,
              QStringList({QStringLiteral("S-05"), QStringLiteral("3 I")}));
    problem = onlyProblem(builder.log(), entryFor(QStringLiteral("sPARE")));
    EXPECT_EQ(faultOf(problem), LogbookFault::NameDiffersInCaseOnly);
}

TEST(SwapTest, RefusesADayThatCannotBe) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral("S-17"));
    entry.on = QDate(2026, 5, 5);
    EXPECT_EQ(faultOf(onlyProblem(builder.log(), entry)), LogbookFault::DateInFuture);
    entry.on = QDate(2026, 5, 4); // the day after today: the shop may be east of the clock
    EXPECT_TRUE(swapOf(builder.log(), entry, kClock).has_value());
    entry.on = QDate(1949, 12, 31);
    entry.races = 0;
    EXPECT_EQ(faultOf(onlyProblem(builder.log(), entry)), LogbookFault::DateTooEarly);
    entry.on = QDate(2026, 4, 1);
    EXPECT_EQ(faultOf(onlyProblem(builder.log(), entry)), LogbookFault::SwapBeforeReading);
}

TEST(SwapTest, RefusesACountOfRacesThatGoesBack) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral("S-17"));
    entry.on = QDate(2026, 5, 3);
    entry.races = 3;
    const SwapProblem problem = onlyProblem(builder.log(), entry);
    EXPECT_EQ(problem.field, SwapField::Races);
    EXPECT_EQ(faultOf(problem), LogbookFault::RacesGoBack);

    builder.race(5, QDate(2026, 5, 4));
    entry.races = 5;
    EXPECT_EQ(faultOf(onlyProblem(builder.log(), entry)), LogbookFault::RaceAfterInspection);
}

TEST(SwapTest, RefusesABaselineThatIsNoReading) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QStringLiteral("S-17"));
    entry.hits = {QStringLiteral("122"), QStringLiteral("12x")};
    const SwapProblem problem = onlyProblem(builder.log(), entry);
    EXPECT_EQ(problem.field, SwapField::Baseline);
    EXPECT_EQ(faultOf(problem), LogbookFault::NotAReading);
    entry.hits = {QStringLiteral("1000.5")};
    EXPECT_EQ(faultOf(onlyProblem(builder.log(), entry)), LogbookFault::ReadingOutOfBounds);
    entry.hits = {QStringLiteral("1000.5")};
    entry.unit = ForceUnit::Newton;
    EXPECT_TRUE(swapOf(builder.log(), entry, kClock).has_value());
}

TEST(SwapTest, TellsAllThatIsWrongInTheOrderOfTheFields) {
    LogBuilder builder = twoInspections();
    SwapEntry entry = entryFor(QString());
    entry.place = {Cylinder(9), Valve::Intake};
    entry.hits = {QStringLiteral("x")};
    const auto result = swapOf(builder.log(), entry, kClock);
    ASSERT_FALSE(result.has_value());
    ASSERT_EQ(result.error().size(), 3U);
    EXPECT_EQ(result.error()[0].field, SwapField::Place);
    EXPECT_EQ(result.error()[1].field, SwapField::Label);
    EXPECT_EQ(result.error()[2].field, SwapField::Baseline);
}

} // namespace
} // namespace coilbook
