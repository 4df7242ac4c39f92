#include "core/domain/log_rules.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <limits>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const QDate kToday(2026, 5, 2);

/// The fault and its arguments as one text, or `fits`.
QString outcomeOf(const Result<void>& result) {
    if (result) {
        return QStringLiteral("fits");
    }
    const auto* fault = std::get_if<LogbookFault>(&result.error().fault);
    return fault == nullptr ? QStringLiteral("not a fault of the logbook")
                            : QString::number(static_cast<int>(*fault)) + QLatin1Char(':') +
                                  result.error().arguments.join(QLatin1Char('|'));
}

QString breach(LogbookFault fault, const char* arguments) {
    return QString::number(static_cast<int>(fault)) + QLatin1Char(':') +
           QString::fromUtf8(arguments);
}

const QString kFits = QStringLiteral("fits");

QString timelineOf(const EngineLog& log, const InspectionId& given = {}) {
    return outcomeOf(checkTimeline(log.inspections, log.races, given));
}

// The contract, section 3: dates not before 1950-01-01, not after tomorrow.
TEST(LogRulesTest, DaysReachFromTheFirstOf1950ToTomorrow) {
    EXPECT_EQ(outcomeOf(checkDay(QDate(1950, 1, 1), kToday)), kFits);
    EXPECT_EQ(outcomeOf(checkDay(kToday.addDays(1), kToday)), kFits);
    EXPECT_EQ(outcomeOf(checkDay(QDate(1949, 12, 31), kToday)),
              breach(LogbookFault::DateTooEarly, "1949-12-31"));
    EXPECT_EQ(outcomeOf(checkDay(kToday.addDays(2), kToday)),
              breach(LogbookFault::DateInFuture, "2026-05-04"));
    EXPECT_EQ(outcomeOf(checkDay(QDate(), kToday)), breach(LogbookFault::DateTooEarly, ""));
}

TEST(LogRulesTest, AnEngineHasANameALayoutAndRulesWithinBounds) {
    Engine engine;
    engine.name = QStringLiteral("Blue");
    EXPECT_EQ(outcomeOf(checkEngine(engine)), kFits);
    Engine nameless = engine;
    nameless.name = QStringLiteral(" \t");
    EXPECT_EQ(outcomeOf(checkEngine(nameless)), breach(LogbookFault::EmptyName, "engine"));
    for (const double limit : {0.0, -5.0, std::numeric_limits<double>::quiet_NaN()}) {
        Engine odd = engine;
        odd.rules.limit = Force::poundsForce(limit);
        EXPECT_TRUE(outcomeOf(checkEngine(odd)).startsWith(breach(LogbookFault::BadLimit, "")));
    }
    for (const int ahead : {-1, 61}) {
        Engine odd = engine;
        odd.rules.racesAhead = ahead;
        EXPECT_TRUE(
            outcomeOf(checkEngine(odd)).startsWith(breach(LogbookFault::BadRacesAhead, "")));
    }
    Engine gap = engine;
    gap.layout.banks.front().places.pop_back();
    EXPECT_TRUE(outcomeOf(checkEngine(gap)).startsWith(breach(LogbookFault::BadLayout, "")));
}

TEST(LogRulesTest, NamesDifferByMoreThanCapitals) {
    const QStringList others{QStringLiteral("Red"), QStringLiteral("Grün")};
    const auto check = [&](const char* name, const char* what) {
        return outcomeOf(checkNameIsFree(QString::fromUtf8(name), QString::fromUtf8(what), others));
    };
    EXPECT_EQ(check("Blue", "engine"), kFits);
    EXPECT_EQ(check("Red", "engine"), breach(LogbookFault::EngineNameTaken, "Red"));
    EXPECT_EQ(check("Red", "tester"), breach(LogbookFault::NameTaken, "tester|Red"));
    EXPECT_EQ(check("GRÜN", "engine"), breach(LogbookFault::NameDiffersInCaseOnly, "GRÜN|Grün"));
}

TEST(LogRulesTest, CountsOfRacesNeverFallOverTheDates) {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 11), 3).inspection(QDate(2026, 4, 18), 3);
    EXPECT_EQ(timelineOf(builder.log()), kFits);
    builder.inspection(QDate(2026, 4, 25), 2);
    EXPECT_EQ(timelineOf(builder.log()), breach(LogbookFault::RacesGoBack, "2|2026-04-18|3"));
    const InspectionId earlier = builder.log().inspections[1].id;
    EXPECT_EQ(timelineOf(builder.log(), earlier),
              breach(LogbookFault::RacesGoBack, "3|2026-04-25|2"));
}

TEST(LogRulesTest, OneDayMayHaveTwoInspectionsAtDifferentCounts) {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 11), 4).inspection(QDate(2026, 4, 11), 3);
    EXPECT_EQ(timelineOf(builder.log()), kFits);
    builder.inspection(QDate(2026, 4, 11), 3);
    EXPECT_EQ(timelineOf(builder.log()), breach(LogbookFault::InspectionExists, "2026-04-11|3"));
}

TEST(LogRulesTest, ARaceIsNotDatedAfterAnInspectionThatCountsIt) {
    LogBuilder builder;
    builder.inspection(QDate(2026, 4, 11), 3).inspection(QDate(2026, 4, 25), 5);
    builder.race(5, QDate(2026, 4, 25)).race(3, QDate(2026, 4, 11)).race(6, QDate(2026, 5, 1));
    EXPECT_EQ(timelineOf(builder.log()), kFits);
    builder.race(4, QDate(2026, 4, 26));
    EXPECT_EQ(timelineOf(builder.log()),
              breach(LogbookFault::RaceAfterInspection, "4|2026-04-26|2026-04-25"));
    builder.log().races.back().number = 5;
    EXPECT_EQ(timelineOf(builder.log()), breach(LogbookFault::RaceExists, "5"));
}

TEST(LogRulesTest, LabelsOfSpringsDifferByMoreThanCapitals) {
    const auto spring = [](const char* label) {
        return Spring{SpringId::make(), QString::fromUtf8(label), {}, {}, {}};
    };
    EXPECT_EQ(outcomeOf(checkSprings({spring("S-1"), spring("S-2")})), kFits);
    EXPECT_EQ(outcomeOf(checkSprings({spring("S-1"), spring("S-1")})),
              breach(LogbookFault::NameTaken, "spring|S-1"));
    EXPECT_EQ(outcomeOf(checkSprings({spring("S-1"), spring("s-1")})),
              breach(LogbookFault::NameDiffersInCaseOnly, "s-1|S-1"));
    EXPECT_EQ(outcomeOf(checkSprings({spring("")})), breach(LogbookFault::EmptyName, "spring"));
}

// The contract, section 3: above 0, at most 1000 lbf or 4448.22 N.
TEST(LogRulesTest, AReadingIsWithinBoundsAndAtAPlaceOfTheEngine) {
    const auto check = [](std::int64_t digits, int decimals, ForceUnit unit, const Place& place) {
        Reading reading;
        reading.value = TypedForce(digits, decimals, unit);
        reading.place = place;
        return outcomeOf(checkReading(reading, defaultLayout()));
    };
    EXPECT_EQ(check(1000, 0, ForceUnit::PoundForce, intake(8)), kFits);
    EXPECT_EQ(check(444822, 2, ForceUnit::Newton, exhaust(1)), kFits);
    EXPECT_EQ(check(1000001, 3, ForceUnit::PoundForce, intake(1)),
              breach(LogbookFault::ReadingOutOfBounds, "1000.001"));
    EXPECT_EQ(check(444823, 2, ForceUnit::Newton, intake(1)),
              breach(LogbookFault::ReadingOutOfBounds, "4448.23"));
    EXPECT_EQ(check(0, 1, ForceUnit::PoundForce, intake(1)),
              breach(LogbookFault::ReadingOutOfBounds, "0.0"));
    EXPECT_EQ(check(1215, 1, ForceUnit::PoundForce, intake(9)),
              breach(LogbookFault::NoSuchPlace, "9 I"));
}

TEST(LogRulesTest, OnlyAmendmentsNameAnOriginal) {
    Reading reading;
    reading.value = TypedForce(1215, 1, ForceUnit::PoundForce);
    reading.amends = ReadingId::make();
    EXPECT_EQ(outcomeOf(checkReading(reading, defaultLayout())),
              breach(LogbookFault::NothingToAmend, ""));
    reading.kind = ReadingKind::Correction;
    EXPECT_EQ(outcomeOf(checkReading(reading, defaultLayout())), kFits);
    reading.amends.reset();
    EXPECT_EQ(outcomeOf(checkReading(reading, defaultLayout())),
              breach(LogbookFault::NothingToAmend, ""));
}

TEST(LogRulesTest, ASpringStandsAtOnePlaceInAnInspectionAndMayMoveUntilTheNext) {
    LogBuilder builder;
    const QString label = QStringLiteral("S-1");
    builder.inspection(QDate(2026, 4, 11), 3);
    builder.reading(exhaust(3), label, QStringLiteral("121.5"));
    builder.inspection(QDate(2026, 4, 18), 4);
    builder.reading(intake(3), label, QStringLiteral("121.0"));
    EXPECT_EQ(outcomeOf(checkHits(builder.log())), kFits);
    builder.reading(exhaust(3), label, QStringLiteral("121.0"));
    EXPECT_EQ(outcomeOf(checkHits(builder.log())),
              breach(LogbookFault::SpringElsewhere, "S-1|3 I"));
}

TEST(LogRulesTest, AHitCountsOnceUnlessItWasWithdrawn) {
    LogBuilder builder;
    const QString label = QStringLiteral("S-1");
    builder.inspection(QDate(2026, 4, 11), 3);
    const ReadingId first = builder.reading(exhaust(3), label, QStringLiteral("121.5"));
    builder.amendment(first, QStringLiteral("112.5"));
    EXPECT_EQ(outcomeOf(checkHits(builder.log())), kFits);
    builder.reading(exhaust(3), label, QStringLiteral("121.0"));
    builder.log().readings.back().hit = 1;
    EXPECT_EQ(outcomeOf(checkHits(builder.log())), breach(LogbookFault::HitExists, "S-1|1"));
    builder.amendment(first, QStringLiteral("112.5"), ReadingKind::Withdrawal);
    EXPECT_EQ(outcomeOf(checkHits(builder.log())), kFits);
}

} // namespace
} // namespace coilbook
