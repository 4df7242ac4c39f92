#include "core/services/sheet_content.h"
#include "core/services/sheet_content_form.h"
#include "core/wording/wording.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {

namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const NotedSeal kSeal{118, QStringLiteral("9f3a2b7c01de44aa55")};
const Moment kEvening{QStringLiteral("2026-05-02T16:30:00.000Z"), 120};
const QDate kFirst(2026, 4, 4);
const QDate kSecond(2026, 4, 18);
const QDate kThird(2026, 5, 2);

QString text(const char* latin1) {
    return QString::fromLatin1(latin1);
}

/// A number and its unit are not torn apart at the end of a line.
QString force(const char* digits, const char* unit) {
    return text(digits) + QLatin1Char(' ') + text(unit);
}

/// Three inspections: 3 E loses 5.25 lbf and is past the limit of 5, 1 I loses a little and was
/// left out of the last one.
LogBuilder season() {
    LogBuilder builder;
    builder.log().engine.name = text("Blue");
    builder.log().engine.serial = text("CB-0417");
    builder.inspection(kFirst, 0);
    builder.reading(exhaust(3), text("S-03"), text("121.50"));
    builder.reading(intake(1), text("S-01"), text("118.0"));
    builder.inspection(kSecond, 2);
    builder.reading(exhaust(3), text("S-03"), text("119.25"));
    builder.reading(intake(1), text("S-01"), text("117.5"));
    builder.inspection(kThird, 4);
    builder.reading(exhaust(3), text("S-03"), text("116.25"));
    return builder;
}

SheetContent contentOf(const EngineLog& log, ForceUnit unit = ForceUnit::PoundForce,
                       std::optional<QDate> asOf = {}) {
    const EngineHistory history = historyOf(log, asOf);
    return sheetContentOf(log, history, assess(history, log.engine.rules),
                          Quantities(unit, QLocale::c()), kEvening, kSeal);
}

const SheetSpring& at(const SheetContent& content, const Place& place) {
    return *std::find_if(content.springs.begin(), content.springs.end(),
                         [&](const SheetSpring& spring) { return spring.place == place; });
}

} // namespace

TEST(SheetContentTest, NamesTheEngineTheInspectionAndTheLimit) {
    const SheetContent content = contentOf(season().log());
    EXPECT_EQ(content.engine, text("Blue"));
    EXPECT_EQ(content.serial, text("CB-0417"));
    EXPECT_EQ(content.inspectedOn, text("2026-05-02"));
    EXPECT_EQ(content.inspectedAtRaces, text("4"));
    EXPECT_EQ(content.limit, force("5.0", "lbf")); // the default: common practice, no source
    EXPECT_EQ(content.printedAt, text("2026-05-02 18:30 UTC+02:00"));
    EXPECT_EQ(content.seal, text("118:9f3a2b7c01de44aa"));
    EXPECT_EQ(content.cautions, wording::cautions());
}

TEST(SheetContentTest, ListsEveryPlaceInThePlansOrder) {
    const SheetContent content = contentOf(season().log());
    std::vector<Place> listed;
    for (const SheetSpring& spring : content.springs) {
        listed.push_back(spring.place);
    }
    std::vector<Place> planned;
    for (const Bank& bank : defaultLayout().banks) {
        planned.insert(planned.end(), bank.places.begin(), bank.places.end());
    }
    EXPECT_EQ(listed, planned);
    EXPECT_EQ(listed.size(), 16U); // common practice, no source
    EXPECT_EQ(at(content, exhaust(8)).label, QString());
}

TEST(SheetContentTest, WritesBaselineLatestAndLossToTheDigitsOfTheWindow) {
    const SheetContent content = contentOf(season().log());
    const SheetSpring& spring = at(content, exhaust(3));
    EXPECT_EQ(spring.label, text("S-03"));
    EXPECT_EQ(spring.baseline, text("121.5"));
    EXPECT_EQ(spring.latest, text("116.3")); // 116.25
    EXPECT_EQ(spring.loss, text("5.3"));     // 5.25
    EXPECT_EQ(spring.standing, Standing::PastLimit);
    EXPECT_EQ(spring.standingWords, wording::standing(Standing::PastLimit, 3));
    ASSERT_TRUE(spring.usedOfLimit);
    EXPECT_NEAR(*spring.usedOfLimit, 5.25 / 5.0, 1e-12);
}

TEST(SheetContentTest, WritesInTheUsersUnit) {
    const SheetContent content = contentOf(season().log(), ForceUnit::Newton);
    EXPECT_EQ(content.unit, text("N"));
    EXPECT_EQ(content.limit, force("22", "N"));               // 5 × 4.4482216152605 = 22.24
    EXPECT_EQ(at(content, exhaust(3)).baseline, text("540")); // 121.5 × 4.4482216152605 = 540.46
}

TEST(SheetContentTest, DatesAReadingThatIsOlderThanTheInspection) {
    const SheetContent content = contentOf(season().log());
    EXPECT_EQ(at(content, exhaust(3)).latestOn, QString());
    EXPECT_EQ(at(content, intake(1)).latestOn, text("2026-04-18"));
}

TEST(SheetContentTest, NamesEachTesterOfTheInspectionOnceWithItsRangeAsNoted) {
    LogBuilder builder = season();
    EngineLog& log = builder.log();
    const TesterId used = TesterId::make();
    log.testers = {{TesterId::make(), text("Other"), {}, {}, {}, {}},
                   {used,
                    text("Bench"),
                    TypedForce::parse(u"160", ForceUnit::PoundForce),
                    {},
                    QDate(2026, 1, 15),
                    {}}};
    log.sittings.back().tester = used;
    log.sittings.back().inspector = text("Shop hand");
    Sitting again = log.sittings.back();
    again.id = SittingId::make();
    log.sittings.push_back(again);

    const SheetContent content = contentOf(log);
    EXPECT_EQ(content.testers,
              (std::vector<SheetTester>{{text("Bench"), force("160", "lbf"), text("2026-01-15")}}));
    EXPECT_EQ(content.inspectors, QStringList{text("Shop hand")});
}

TEST(SheetContentTest, SaysWhatIsNotCountedByWhomAndWhatIsNoWear) {
    LogBuilder builder = season();
    builder.decide(text("S-03"), 1, ReadingJudgement::SetAside)
        .levelChange(text("S-01"), kFirst.addDays(3), 0, LevelChangeKind::ValveSeatWork);
    const SheetContent content = contentOf(builder.log());
    EXPECT_EQ(content.notCounted,
              QStringList{text("3 E S-03, 119.3 of 2026-04-18 (set aside by Kim)")});
    EXPECT_EQ(content.levelChanges, QStringList{text("1 I S-01 on 2026-04-07 (valve seat)")});
    EXPECT_TRUE(contentOf(season().log()).notCounted.isEmpty());
}

TEST(SheetContentTest, EndsOnTheDayAskedFor) {
    const SheetContent content = contentOf(season().log(), ForceUnit::PoundForce, kSecond);
    EXPECT_EQ(content.asOf, text("2026-04-18"));
    EXPECT_EQ(content.inspectedOn, text("2026-04-18"));
    EXPECT_EQ(content.amendedSince, text("2026-04-04"));
    EXPECT_EQ(at(content, exhaust(3)).latest, text("119.3")); // 119.25
}

TEST(SheetContentTest, EngineWithoutInspectionsHasPlacesAndNothingElse) {
    const SheetContent content = contentOf(LogBuilder().log());
    EXPECT_EQ(content.inspectedOn, QString());
    EXPECT_EQ(content.amendedSince, QString());
    EXPECT_EQ(content.springs.size(), 16U);
    EXPECT_TRUE(content.amendments.empty());
    EXPECT_LT(content.range.least, content.range.most);
}

TEST(SheetContentTest, PrintTimeIsLocalWithItsOffset) {
    EXPECT_EQ(printedMoment({text("2026-05-02T23:30:00.000Z"), -210}),
              text("2026-05-02 20:00 UTC") + QChar(0x2212) + text("03:30"));
    EXPECT_EQ(printedMoment({}), QString());
}

TEST(RoundFormContentTest, KnowsTheSpringsThatStandThereAndTheirLatestReadings) {
    LogBuilder builder = season();
    const EngineLog& log = builder.log();
    const EngineHistory history = historyOf(log);
    const RoundFormContent content =
        roundFormContentOf(log.engine, assess(history, log.engine.rules),
                           Quantities(ForceUnit::PoundForce, QLocale::c()), kEvening);
    EXPECT_EQ(content.racesRun, text("4"));
    ASSERT_EQ(content.places.size(), 16U);
    const auto known = std::find(content.places.begin(), content.places.end(),
                                 RoundFormPlace{exhaust(3), text("S-03"), text("116.3")});
    EXPECT_NE(known, content.places.end());
    const auto empty =
        std::find(content.places.begin(), content.places.end(), RoundFormPlace{exhaust(8), {}, {}});
    EXPECT_NE(empty, content.places.end());
}

} // namespace coilbook
