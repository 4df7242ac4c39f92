#include "core/domain/calibration.h"
#include "core/domain/repeatability_study.h"
#include "tests/core/storage/logbook_fixture.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

Calibration tableOf(const char* points, int degree = 1) {
    Calibration calibration;
    calibration.id = CalibrationId::make();
    calibration.tester = TesterId::make();
    calibration.calibratedOn = QDate(2026, 1, 10);
    calibration.degree = degree;
    calibration.points = pointsFromText(QString::fromLatin1(points), ForceUnit::PoundForce).value();
    return calibration;
}

TEST(CalibrationTest, ItsTableComesBackDigitByDigit) {
    const QString text = QStringLiteral("0:0.0 20:20.50 100.000:101");
    const auto points = pointsFromText(text, ForceUnit::Newton);
    ASSERT_TRUE(points.has_value());
    EXPECT_EQ(points->size(), 3U);
    EXPECT_EQ(pointsToText(*points), text);
    EXPECT_FALSE(pointsFromText(QStringLiteral("20"), ForceUnit::Newton).has_value());
    EXPECT_FALSE(pointsFromText(QStringLiteral("20:x"), ForceUnit::Newton).has_value());
}

TEST(CalibrationTest, ACurveNeedsMoreDifferentForcesThanItsDegree) {
    EXPECT_TRUE(succeeded(checkCalibration(tableOf("20:20 40:41"))));
    EXPECT_TRUE(
        failedWith(LogbookFault::CalibrationTooShort, checkCalibration(tableOf("20:20 20:21"))));
    EXPECT_TRUE(
        failedWith(LogbookFault::CalibrationTooShort, checkCalibration(tableOf("20:20 40:41", 2))));
    EXPECT_TRUE(succeeded(checkCalibration(tableOf("20:20 40:41 60:62", 2))));
}

TEST(CalibrationTest, SwappedColumnsAndWrongDatesAreRefused) {
    EXPECT_TRUE(failedWith(LogbookFault::CalibrationNotRising,
                           checkCalibration(tableOf("20:60 40:40 60:20"))));
    EXPECT_TRUE(
        failedWith(LogbookFault::ReadingOutOfBounds, checkCalibration(tableOf("20:20 1001:1002"))));
    Calibration due = tableOf("20:20 40:41");
    due.dueOn = due.calibratedOn;
    EXPECT_TRUE(failedWith(LogbookFault::CalibrationDueBefore, checkCalibration(due)));
}

TEST(CalibrationTest, TheNewestByTheDayCorrectsAndTheFirstAlsoWhatWasReadBefore) {
    std::vector<Calibration> all{tableOf("20:20 40:41"), tableOf("20:21 40:42"),
                                 tableOf("20:22 40:43")};
    for (Calibration& each : all) {
        each.tester = all.front().tester;
    }
    all[1].calibratedOn = QDate(2026, 6, 1);
    all[2].calibratedOn = QDate(2026, 9, 1);
    all[2].withdrawn = true;
    const TesterId tester = all.front().tester;
    EXPECT_EQ(calibrationFor(all, tester, QDate(2026, 5, 31)), &all[0]);
    EXPECT_EQ(calibrationFor(all, tester, QDate(2026, 6, 1)), &all[1]);
    EXPECT_EQ(calibrationFor(all, tester, QDate(2027, 1, 1)), &all[1]) << "one is taken back";
    EXPECT_EQ(calibrationFor(all, tester, QDate(2025, 1, 1)), &all[0]);
    EXPECT_EQ(newestCalibration(all, tester, QDate(2025, 1, 1)), nullptr);
    EXPECT_EQ(calibrationFor(all, TesterId::make(), QDate(2026, 6, 1)), nullptr);
}

TEST(CalibrationTest, IsOverdueFromTheDayAfterItsDueDate) {
    Calibration calibration = tableOf("20:20 40:41");
    EXPECT_FALSE(isOverdue(calibration, QDate(2030, 1, 1)));
    calibration.dueOn = QDate(2027, 1, 10);
    EXPECT_FALSE(isOverdue(calibration, QDate(2027, 1, 10)));
    EXPECT_TRUE(isOverdue(calibration, QDate(2027, 1, 11)));
}

TEST(CalibrationTest, AStudyNeedsTwoSpringsAndTwoHitsAndNamesThatDiffer) {
    RepeatabilityStudy study;
    study.springs = {QStringLiteral("S-1"), QStringLiteral("S-2")};
    study.persons = {QStringLiteral("Kim")};
    study.hits = 2;
    study.readings.assign(4, std::nullopt);
    EXPECT_TRUE(succeeded(checkStudy(study)));
    RepeatabilityStudy twice = study;
    twice.springs = {QStringLiteral("S-1"), QStringLiteral("s-1")};
    EXPECT_TRUE(failedWith(LogbookFault::NameTaken, checkStudy(twice)));
    RepeatabilityStudy small = study;
    small.hits = 1;
    EXPECT_TRUE(failedWith(LogbookFault::StudyTooSmall, checkStudy(small)));
    RepeatabilityStudy high = study;
    high.readings.front() = TypedForce(1001, 0, ForceUnit::PoundForce);
    EXPECT_TRUE(failedWith(LogbookFault::ReadingOutOfBounds, checkStudy(high)));
}

TEST(CalibrationTest, TheReadingsOfAStudyComeBackWithTheirGaps) {
    const QString text = QStringLiteral("121.50 - 120");
    const auto readings = studyReadingsFromText(text, ForceUnit::PoundForce);
    ASSERT_TRUE(readings.has_value());
    EXPECT_FALSE((*readings)[1].has_value());
    EXPECT_EQ(studyReadingsToText(*readings), text);
    EXPECT_FALSE(studyReadingsFromText(QStringLiteral("x"), ForceUnit::Newton).has_value());
}

} // namespace
} // namespace coilbook
