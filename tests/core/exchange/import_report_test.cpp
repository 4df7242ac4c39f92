#include "core/wording/import_report.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

QStringList linesOf(const ImportReport& report) {
    return wording::importReport(report).split(QLatin1Char('\n'));
}

TEST(ImportReportTest, SaysWhatWasAddedAndMade) {
    ImportReport report;
    report.readingsRead = report.readingsAdded = 1;
    report.racesRead = 3;
    report.racesAdded = 2;
    report.racesKnown = 1;
    report.enginesMade = QStringList{QStringLiteral("Blue"), QStringLiteral("Red\t")};
    EXPECT_EQ(linesOf(report),
              (QStringList{QStringLiteral("Read 1 reading and 3 races."),
                           QStringLiteral("Added 1 reading and 2 races."),
                           QStringLiteral("1 row was in the logbook already."),
                           QStringLiteral("Engines made with the usual settings: Blue, Red\\t.")}));
}

TEST(ImportReportTest, SaysThatNothingWasChanged) {
    ImportReport report;
    report.readingsRead = report.readingsKnown = 48;
    report.amendedOriginals = 2;
    EXPECT_EQ(
        linesOf(report),
        (QStringList{QStringLiteral("Read 48 readings and 0 races."),
                     QStringLiteral("All of it was in the logbook already; nothing was changed."),
                     QStringLiteral(
                         "2 rows hold what the logbook has amended since; the amendments stay.")}));
    EXPECT_TRUE(wording::importReport({}).contains(QStringLiteral("no rows")));
}

TEST(ImportReportTest, TellsMovedBaselinesAndCountsTheRestOfManyOfThem) {
    ImportReport report;
    report.readingsRead = report.readingsAdded = 16;
    report.movedBaselines.assign(
        16, {QStringLiteral("Blue"), QStringLiteral("S-1"), QDate(2026, 4, 18), QDate(2026, 4, 4)});
    const QStringList lines = linesOf(report);
    ASSERT_EQ(lines.size(), 13);
    EXPECT_EQ(lines.at(2), QStringLiteral("The baseline of spring “S-1” of engine “Blue” moved "
                                          "back from 2026-04-18 to 2026-04-04."));
    EXPECT_EQ(lines.last(), QStringLiteral("The baselines of further springs moved back: 6."));
}

} // namespace
} // namespace coilbook
