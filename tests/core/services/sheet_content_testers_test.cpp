#include "core/services/sheet_content.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::intake;
using testing::LogBuilder;

const QDate kFirst(2026, 4, 4);
const QDate kSecond(2026, 4, 18);

/// Two inspections of one spring with a tester that shows 3 lbf too much; its calibration was due
/// between them.
EngineLog seasonOfAnOverdueTester() {
    LogBuilder builder;
    builder.inspection(kFirst, 0);
    builder.reading(intake(1), QStringLiteral("S-01"), QStringLiteral("121.0"));
    builder.inspection(kSecond, 2);
    builder.reading(intake(1), QStringLiteral("S-01"), QStringLiteral("120.0"));
    EngineLog log = builder.log();
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Small dial");
    log.testers = {tester};
    for (Sitting& sitting : log.sittings) {
        sitting.tester = tester.id;
    }
    Calibration calibration;
    calibration.id = CalibrationId::make();
    calibration.tester = tester.id;
    calibration.calibratedOn = QDate(2025, 4, 10);
    calibration.dueOn = QDate(2026, 4, 10);
    calibration.points = pointsFromText(QStringLiteral("40:43 80:83 120:123 160:163.0 160:163"),
                                        ForceUnit::PoundForce)
                             .value();
    log.calibrations = {calibration};
    return log;
}

SheetContent sheetOf(const EngineLog& log) {
    const EngineHistory history = historyOf(log);
    return sheetContentOf(log, history, assess(history, log.engine.rules),
                          Quantities(ForceUnit::PoundForce, QLocale::c()), Moment{});
}

const SheetSpring& firstPlace(const SheetContent& content) {
    return *std::find_if(content.springs.begin(), content.springs.end(),
                         [](const SheetSpring& spring) { return spring.place == intake(1); });
}

TEST(SheetContentTestersTest, WarnsOfAnOverdueCalibrationAndNamesTheCorrection) {
    const SheetContent content = sheetOf(seasonOfAnOverdueTester());
    ASSERT_EQ(content.testers.size(), 1U);
    EXPECT_EQ(content.testers.front().calibratedOn, QStringLiteral("2025-04-10 OVERDUE"));
    ASSERT_EQ(content.testerNotes.size(), 2);
    EXPECT_TRUE(content.testerNotes.first().startsWith(
        QStringLiteral("The calibration of tester Small dial was due on 2026-04-10")));
    EXPECT_TRUE(
        content.testerNotes.last().contains(QStringLiteral("the calibration of 2025-04-10")));
}

TEST(SheetContentTestersTest, ShowsTheReadingAsReadAndTheCorrectedOneBesideIt) {
    EngineLog log = seasonOfAnOverdueTester();
    const SheetContent content = sheetOf(log);
    EXPECT_EQ(firstPlace(content).latest, QStringLiteral("120.0"));
    EXPECT_EQ(firstPlace(content).latestCorrected, QStringLiteral("117.0"));
    log.testers.front().corrects = false;
    const SheetContent plain = sheetOf(log);
    EXPECT_EQ(firstPlace(plain).latest, QStringLiteral("120.0"));
    EXPECT_TRUE(firstPlace(plain).latestCorrected.isEmpty());
    EXPECT_EQ(plain.testerNotes.size(), 1) << "overdue all the same";
}

TEST(SheetContentTestersTest, SaysThatATemperatureIsMissing) {
    EngineLog log = seasonOfAnOverdueTester();
    log.calibrations.clear();
    log.engine.correctsTemperature = true;
    EXPECT_TRUE(sheetOf(log).testerNotes.join(QString()).contains(
        QStringLiteral("note it with the inspection")));
    log.sittings.back().engineTemperature = Temperature::milliCelsius(120'000);
    const SheetContent content = sheetOf(log);
    EXPECT_EQ(firstPlace(content).latestCorrected, QStringLiteral("123.1")); // 120 / 0.975
    EXPECT_FALSE(content.testerNotes.join(QString()).contains(
        QStringLiteral("note it with the inspection")));
}

} // namespace
} // namespace coilbook
