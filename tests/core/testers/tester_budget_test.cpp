#include "core/testers/tester_budget.h"
#include "core/wording/tester_words.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

Tester gauge(int range, GaugeGrade grade, int graduation = 1) {
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Dial");
    tester.range = TypedForce(range, 0, ForceUnit::PoundForce);
    tester.graduation = TypedForce(graduation, 0, ForceUnit::PoundForce);
    tester.accuracy = grade;
    return tester;
}

const Force kLimit = Force::poundsForce(5.0);

TesterBudget plainBudget(const Tester& tester, const Force& limit = kLimit) {
    BudgetBasis basis;
    basis.tester = tester;
    return budgetOf(basis, limit);
}

/// With plain spaces between number and unit.
QString sentenceFor(const TesterBudget& budget) {
    return wording::suitabilitySentence(budget,
                                        Quantities(ForceUnit::PoundForce, QLocale(QLocale::C)))
        .replace(QChar(QChar::Nbsp), QLatin1Char(' '));
}

// Common practice, no source: a 160 lbf gauge serves a 5 lbf limit better than a 600 lbf one.
TEST(TesterBudgetTest, ASmallRangeServesTheLimitBetterThanALargeOne) {
    const TesterBudget small = plainBudget(gauge(160, GaugeGrade::A, 1));
    const TesterBudget large = plainBudget(gauge(600, GaugeGrade::A, 5));
    EXPECT_LT(small.loss, large.loss);
    EXPECT_GT(small.ratio, large.ratio);
    EXPECT_EQ(large.suitability, Suitability::CannotTell);
    EXPECT_EQ(small.suitability, Suitability::Rough);
    EXPECT_EQ(sentenceFor(large), QStringLiteral("This gauge can be off by 6.0 lbf at mid-scale: "
                                                 "it cannot tell a loss of 5.0 lbf."));
}

// By hand from JCGM 100:2008: division/√12 (F.2.2.1) and error/√3 (4.3.7), squared and added, √2
// for the two readings of a loss.
TEST(TesterBudgetTest, AddsDivisionAndAccuracyByTheGuide) {
    const TesterBudget budget = plainBudget(gauge(160, GaugeGrade::A));
    ASSERT_EQ(budget.lines.size(), 2U);
    EXPECT_NEAR(budget.lines[0].standard.inPoundsForce(), 1.0 / std::sqrt(12.0), 1e-12);
    EXPECT_NEAR(budget.lines[1].standard.inPoundsForce(), 1.6 / std::sqrt(3.0), 1e-12);
    const double reading = std::sqrt(1.0 / 12.0 + 1.6 * 1.6 / 3.0);
    EXPECT_NEAR(budget.reading.inPoundsForce(), reading, 1e-12);
    EXPECT_NEAR(budget.loss.inPoundsForce(), reading * std::sqrt(2.0), 1e-12);
    EXPECT_NEAR(budget.ratioToStandard, 5.0 / (reading * std::sqrt(2.0)), 1e-12);
    EXPECT_NEAR(budget.ratio, budget.ratioToStandard / 1.959963985, 1e-8);
    EXPECT_EQ(budget.missing, std::vector<BudgetPart>{BudgetPart::Repeatability});
}

TEST(TesterBudgetTest, JudgesByTheRulesOfFourAndOfTenToOne) {
    Tester fine = gauge(160, GaugeGrade::FourA); // 0.16 lbf
    fine.graduation = TypedForce(1, 1, ForceUnit::PoundForce);
    const double loss = std::sqrt(2.0 * (0.01 / 12.0 + 0.16 * 0.16 / 3.0)) * 1.959963985;
    const auto limit = [&](double ratio) {
        return Force::poundsForce(loss * ratio);
    };
    EXPECT_EQ(plainBudget(fine, limit(10.01)).suitability, Suitability::TenToOne);
    EXPECT_EQ(plainBudget(fine, limit(9.99)).suitability, Suitability::FourToOne);
    EXPECT_EQ(plainBudget(fine, limit(4.01)).suitability, Suitability::FourToOne);
    EXPECT_EQ(plainBudget(fine, limit(3.99)).suitability, Suitability::Rough);
    EXPECT_EQ(plainBudget(fine, limit(0.99)).suitability, Suitability::CannotTell);
}

TEST(TesterBudgetTest, OfAnUnknownTesterItSaysWhatIsMissing) {
    const TesterBudget budget = plainBudget(Tester{});
    EXPECT_EQ(budget.suitability, Suitability::Unknown);
    EXPECT_EQ(budget.missing, (std::vector<BudgetPart>{BudgetPart::Graduation, BudgetPart::Accuracy,
                                                       BudgetPart::Repeatability}));
    EXPECT_EQ(wording::missingSentences(budget).size(), 3);
    EXPECT_TRUE(sentenceFor(budget).contains(QStringLiteral("note its grade")));
}

TEST(TesterBudgetTest, ACalibrationStandsInForTheGradeAndAStudyAddsTheHand) {
    const Tester tester = gauge(160, GaugeGrade::B);
    Calibration calibration;
    calibration.id = CalibrationId::make();
    calibration.tester = tester.id;
    calibration.calibratedOn = QDate(2026, 1, 10);
    calibration.points = pointsFromText(QStringLiteral("20:20.2 50:49.9 80:80.1 110:110.2 140:140"),
                                        ForceUnit::PoundForce)
                             .value();
    RepeatabilityStudy study;
    study.id = StudyId::make();
    study.tester = tester.id;
    study.springs = {QStringLiteral("S-1"), QStringLiteral("S-2")};
    study.persons = {QStringLiteral("Kim"), QStringLiteral("Alex")};
    study.hits = 2;
    for (const int tenths : {1200, 1204, 1201, 1203, 1300, 1305, 1302, 1304}) {
        study.readings.emplace_back(TypedForce(tenths, 1, ForceUnit::PoundForce));
    }
    const TesterBudget graded = budgetOf(basisOf(tester, {}, {}, false), kLimit);
    const TesterBudget known = budgetOf(basisOf(tester, {calibration}, {study}, true), kLimit);
    EXPECT_TRUE(known.missing.empty());
    EXPECT_LT(known.reading, graded.reading);
    const auto has = [&](BudgetPart part) {
        return std::any_of(known.lines.begin(), known.lines.end(),
                           [&](const BudgetLine& line) { return line.part == part; });
    };
    EXPECT_TRUE(has(BudgetPart::Calibration));
    EXPECT_FALSE(has(BudgetPart::Accuracy));
    EXPECT_TRUE(has(BudgetPart::Repeatability));
    EXPECT_TRUE(has(BudgetPart::Persons));
    EXPECT_TRUE(has(BudgetPart::Temperature));
    EXPECT_TRUE(known.degreesOfFreedom.has_value()) << "few hits and points: Student's t";
    Tester uncorrected = tester;
    uncorrected.corrects = false;
    EXPECT_EQ(budgetOf(basisOf(uncorrected, {calibration}, {study}, true), kLimit).canBeOffBy,
              graded.canBeOffBy);
}

} // namespace
} // namespace coilbook
