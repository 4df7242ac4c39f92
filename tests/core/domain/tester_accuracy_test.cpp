#include "core/domain/tester.h"
#include "core/domain/tester_accuracy.h"
#include "tests/support/csv_table.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

TypedForce lbf(int value) {
    return {value, 0, ForceUnit::PoundForce};
}

double errorAt(const TesterAccuracy& accuracy, double at, int span) {
    return permittedError(accuracy, Force::poundsForce(at), lbf(span)).value().inPoundsForce();
}

// ASME B40.100; see tests/data/gauge/SOURCE for what is confirmed and what is from memory.
TEST(TesterAccuracyTest, GradesPermitWhatTheTableSays) {
    const testing::CsvTable table("gauge/asme_b40_100_grades.csv");
    ASSERT_EQ(table.rows(), kGradeRows.size());
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const GradeRow& grade = kGradeRows.at(row);
        EXPECT_EQ(grade.name, table.text(row, "grade"));
        // On a span of 100 lbf the percentages are the forces.
        EXPECT_NEAR(errorAt(grade.grade, 10, 100), table.number(row, "lower_quarter_pct_span"),
                    1e-12);
        EXPECT_NEAR(errorAt(grade.grade, 25, 100), table.number(row, "middle_half_pct_span"),
                    1e-12);
        EXPECT_NEAR(errorAt(grade.grade, 75, 100), table.number(row, "middle_half_pct_span"),
                    1e-12);
        EXPECT_NEAR(errorAt(grade.grade, 90, 100), table.number(row, "upper_quarter_pct_span"),
                    1e-12);
    }
}

TEST(TesterAccuracyTest, PercentagesAreOfTheSpanOrOfTheReading) {
    const Percentage oneAndAHalf = percentageFromText(QStringLiteral("1,5")).value();
    EXPECT_NEAR(errorAt(PercentOfSpan{oneAndAHalf}, 30, 200), 3.0, 1e-12);
    EXPECT_NEAR(errorAt(PercentOfReading{oneAndAHalf}, 30, 200), 0.45, 1e-12);
    EXPECT_NEAR(errorAt(lbf(2), 30, 200), 2.0, 1e-12);
}

TEST(TesterAccuracyTest, WithoutARangeAGradeSaysNothing) {
    const Force at = Force::poundsForce(120);
    EXPECT_FALSE(permittedError(GaugeGrade::A, at, {}).has_value());
    EXPECT_FALSE(permittedError(PercentOfSpan{{1000}}, at, {}).has_value());
    EXPECT_TRUE(permittedError(PercentOfReading{{1000}}, at, {}).has_value());
}

TEST(TesterAccuracyTest, EveryAccuracyComesBackFromItsText) {
    const std::vector<TesterAccuracy> all{GaugeGrade::FourA,
                                          GaugeGrade::D,
                                          PercentOfSpan{{1500}},
                                          PercentOfSpan{{100'000}},
                                          PercentOfReading{{1}},
                                          TypedForce(150, 2, ForceUnit::PoundForce),
                                          TypedForce(9, 0, ForceUnit::Newton)};
    for (const TesterAccuracy& accuracy : all) {
        EXPECT_EQ(accuracyFromText(accuracyToText(accuracy)), accuracy)
            << accuracyToText(accuracy).toStdString();
    }
    EXPECT_EQ(accuracyToText(GaugeGrade::TwoA), QStringLiteral("grade 2A"));
    EXPECT_EQ(accuracyToText(PercentOfSpan{{1500}}), QStringLiteral("1.5 % of span"));
}

TEST(TesterAccuracyTest, OtherTextIsNoAccuracy) {
    for (const char* text : {"", "grade 5A", "grade ", "0 % of span", "101 % of span",
                             "1.0001 % of reading", "-1 lbf", "lbf", "2 kg", "1.5 % of"}) {
        EXPECT_FALSE(accuracyFromText(QString::fromLatin1(text)).has_value()) << text;
    }
}

TEST(TesterAccuracyTest, AZeroOffsetKeepsItsSignAndItsDigits) {
    const ZeroOffset below{TypedForce(150, 2, ForceUnit::PoundForce), true};
    EXPECT_EQ(zeroOffsetToText(below), QStringLiteral("-1.50 lbf"));
    EXPECT_EQ(zeroOffsetFromText(QStringLiteral("-1.50 lbf")), below);
    EXPECT_EQ(below.force(), Force::poundsForce(-1.5));
    EXPECT_FALSE(zeroOffsetFromText(QStringLiteral("--1 lbf")).has_value());
}

} // namespace
} // namespace coilbook
