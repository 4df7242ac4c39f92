#include "core/wording/round_words.h"
#include "core/wording/wording.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

constexpr Force lbf(double value) {
    return Force::poundsForce(value);
}

const Quantities kUnits{ForceUnit::PoundForce, QLocale::c()};

InspectionAssessment inspection(int races, double shift, bool shifted) {
    InspectionAssessment made;
    made.on = QDate(2026, 5, 2).addDays(7 * races);
    made.races = races;
    made.shift = ForceEstimate{lbf(shift), lbf(shift - 0.7), lbf(shift + 0.7)};
    made.shifted = shifted;
    return made;
}

TEST(EstimateWordsTest, WhatLiesBelowNoLossIsToldAsNoLoss) {
    EXPECT_EQ(wording::lossWithRange({lbf(3.1), lbf(2.2), lbf(4.0)}, kUnits),
              QStringLiteral("3.1 (2.2 to 4.0)"));
    EXPECT_EQ(wording::lossWithRange({lbf(0.3), lbf(-0.6), lbf(1.2)}, kUnits),
              QStringLiteral("0.3 (0.0 to 1.2)"));
    EXPECT_EQ(wording::lossWithRange({lbf(-0.3), lbf(-0.9), lbf(0.2)}, kUnits),
              QStringLiteral("0.0 (0.0 to 0.2)"));
}

TEST(EstimateWordsTest, AStandingIsToldWithItsFlags) {
    SpringAssessment spring;
    spring.standing = Standing::Due;
    EXPECT_EQ(wording::standing(spring, 3), QStringLiteral("due within 3 races"));
    spring.provisional = true;
    EXPECT_EQ(wording::standing(spring, 3), QStringLiteral("due within 3 races, provisional"));
    spring.offTrend = true;
    EXPECT_EQ(wording::standing(spring, 3),
              QStringLiteral("due within 3 races, off its trend, provisional"));
    spring = {};
    spring.provisional = true; // just fitted: there is nothing yet that could be provisional
    EXPECT_EQ(wording::standing(spring, 3), QStringLiteral("no trend yet"));
}

TEST(EstimateWordsTest, TheBenchTellsWhatIsExpectedAndWhatTheTrendSays) {
    LiveFigures figures;
    EXPECT_EQ(wording::liveFigures(figures, {}, kUnits), QString());
    EXPECT_EQ(wording::expectedReading({lbf(121.43), lbf(120.28), lbf(122.51)}, kUnits),
              QStringLiteral("120.3 to 122.5"));
    figures.spring.loss = ForceEstimate{lbf(2.3), lbf(1.1), lbf(3.4)};
    figures.spring.standing = Standing::Sound;
    EXPECT_EQ(wording::liveFigures(figures, {}, kUnits),
              QStringLiteral("By its trend lost 2.3 (1.1 to 3.4) lbf: sound"));
}

TEST(EstimateWordsTest, ARoundThatReadsLowSaysWhatToLookAtBeforeGoingOn) {
    const RoundCheck check{-2.6, {lbf(-2.1), lbf(-3.0), lbf(-1.2)}, 5};
    const QString sentence = wording::roundCheck(check, kUnits);
    for (const char* words : {"2.1 lbf low", "zero", "adapter", "temperature"}) {
        EXPECT_TRUE(sentence.contains(QString::fromLatin1(words))) << words;
    }
}

TEST(EstimateWordsTest, ALowNewestInspectionSaysWhatToDoAndWhatItCannotTell) {
    Assessment assessment;
    EXPECT_EQ(wording::newestShift(assessment, kUnits), QString());
    assessment.inspections = {inspection(0, 0.1, false), inspection(1, -1.8, false)};
    EXPECT_EQ(wording::newestShift(assessment, kUnits), QString());
    assessment.inspections.back().shifted = true;
    EXPECT_EQ(wording::newestShift(assessment, kUnits),
              QStringLiteral(
                  "The inspection of 2026-05-09 reads about 1.8 lbf low on all springs: look at "
                  "the tester's zero, its adapter and the engine's temperature, and test three "
                  "springs again before swapping. One inspection cannot tell this from a real loss "
                  "that all springs share, as after an over-rev that nobody noted; the next one "
                  "can."));
}

TEST(EstimateWordsTest, AHighNewestInspectionHidesLosses) {
    Assessment assessment;
    assessment.inspections = {inspection(0, 0.1, false), inspection(1, 1.8, true)};
    const QString text = wording::newestShift(assessment, kUnits);
    EXPECT_TRUE(text.contains(QStringLiteral("1.8 lbf high"))) << text.toStdString();
    EXPECT_TRUE(text.endsWith(QStringLiteral("losses look smaller than they are.")));
}

TEST(EstimateWordsTest, EarlierShiftedInspectionsAreNamedOneByOne) {
    Assessment assessment;
    assessment.inspections = {inspection(0, 0.0, false), inspection(4, -2.3, true),
                              inspection(5, 0.2, false), inspection(6, 1.4, true),
                              inspection(7, -2.0, true)};
    EXPECT_EQ(
        wording::earlierShifts(assessment, kUnits),
        (QStringList{QStringLiteral("The inspection after 4 races reads about 2.3 lbf low on all "
                                    "springs; the trend allows for that, so leave its readings as "
                                    "they are."),
                     QStringLiteral("The inspection after 6 races reads about 1.4 lbf high on all "
                                    "springs; the trend allows for that, so leave its readings as "
                                    "they are.")}));
}

} // namespace
} // namespace coilbook
