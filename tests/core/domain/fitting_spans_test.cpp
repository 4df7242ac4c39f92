#include "core/domain/fitting_spans.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const QString kOld = QStringLiteral("Old");
const QString kNew = QStringLiteral("New");
const QString kLbf = QStringLiteral("120");

QDate day(int number) {
    return QDate(2026, 4, 1).addDays(number);
}

/// `Old 3 E 0-9` per span; an open end is `-`.
QStringList spansOf(LogBuilder& builder, const QDate& asOf = day(1000)) {
    QStringList texts;
    const EngineLog& log = builder.log();
    for (const FittingSpan& span : fittingSpans(log, currentHits(log), asOf)) {
        QString label;
        for (const Spring& spring : log.springs) {
            label = spring.id == span.spring ? spring.label : label;
        }
        texts << QStringLiteral("%1 %2 %3-%4")
                     .arg(label, placeText(span.place), QString::number(span.fittedRaces),
                          span.endedRaces ? QString::number(*span.endedRaces) : QString());
    }
    return texts;
}

TEST(FittingSpansTest, ASpringStandsFromItsFirstReadingUntilAnotherStandsThere) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(3), kOld, kLbf);
    builder.inspection(day(7), 1);
    (void)builder.reading(exhaust(3), kNew, kLbf);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("Old 3 E 0-1"), QStringLiteral("New 3 E 1-")}));
}

TEST(FittingSpansTest, AnInspectionWithoutTheSpringDoesNotTakeItOut) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(3), kOld, kLbf);
    builder.inspection(day(7), 1);
    (void)builder.reading(intake(3), kNew, kLbf);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("New 3 I 1-"), QStringLiteral("Old 3 E 0-")}));
}

TEST(FittingSpansTest, OfTwoSpringsReadAtOnePlaceTheOneThatStoodThereGoesOut) {
    // Entered new spring first: the order of rows must not matter.
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(3), kOld, kLbf);
    builder.inspection(day(7), 1);
    (void)builder.reading(exhaust(3), kNew, kLbf);
    (void)builder.reading(exhaust(3), kOld, kLbf);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("Old 3 E 0-1"), QStringLiteral("New 3 E 1-")}));
}

TEST(FittingSpansTest, WhereNeitherStoodThereTheOneThatIsReadThereNextWasPutIn) {
    LogBuilder builder;
    builder.inspection(day(0), 4);
    (void)builder.reading(exhaust(3), QStringLiteral("A"), kLbf);
    (void)builder.reading(exhaust(3), QStringLiteral("B"), kLbf);
    builder.inspection(day(7), 5);
    (void)builder.reading(exhaust(3), QStringLiteral("A"), kLbf);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("B 3 E 4-4"), QStringLiteral("A 3 E 4-")}));
}

TEST(FittingSpansTest, ASpringMayComeBackElsewhere) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(3), kOld, kLbf);
    builder.inspection(day(7), 2);
    (void)builder.reading(exhaust(3), kNew, kLbf);
    builder.inspection(day(14), 5);
    (void)builder.reading(intake(1), kOld, kLbf);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("Old 1 I 5-"), QStringLiteral("Old 3 E 0-2"),
                           QStringLiteral("New 3 E 2-")}));
}

TEST(FittingSpansTest, TwoSpringsMayTradePlaces) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(intake(1), kOld, kLbf);
    (void)builder.reading(exhaust(1), kNew, kLbf);
    builder.inspection(day(7), 1);
    (void)builder.reading(intake(1), kNew, kLbf);
    (void)builder.reading(exhaust(1), kOld, kLbf);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("Old 1 I 0-1"), QStringLiteral("New 1 I 1-"),
                           QStringLiteral("New 1 E 0-1"), QStringLiteral("Old 1 E 1-")}));
}

TEST(FittingSpansTest, ARecordedSwapCountsFromItsDayAndAWithdrawnOneNotAtAll) {
    LogBuilder builder;
    builder.inspection(day(0), 0);
    (void)builder.reading(exhaust(3), kOld, kLbf);
    builder.fit(exhaust(3), kNew, day(3), 1);
    EXPECT_EQ(spansOf(builder),
              (QStringList{QStringLiteral("Old 3 E 0-1"), QStringLiteral("New 3 E 1-")}));
    EXPECT_EQ(spansOf(builder, day(2)), QStringList{QStringLiteral("Old 3 E 0-")});
    builder.log().fittings.back().withdrawn = true;
    EXPECT_EQ(spansOf(builder), QStringList{QStringLiteral("Old 3 E 0-")});
}

} // namespace
} // namespace coilbook
