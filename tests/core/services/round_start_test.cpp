#include "core/services/round_start.h"
#include "tests/core/services/round_log.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::RoundLog;

TEST(RoundStartTest, PrefillsTheHighestCountKnownAndTheTesterLastUsed) {
    RoundLog maker;
    EXPECT_EQ(roundPrefill(maker.log), RoundPrefill{});
    const TesterId tester = TesterId::make();
    maker.inspect("2026-03-01", 2);
    maker.log.sittings.back().tester = tester;
    maker.inspect("2026-03-15", 4);
    EXPECT_EQ(roundPrefill(maker.log).races, 4);
    EXPECT_EQ(roundPrefill(maker.log).tester, tester);
    Race race;
    race.number = 5;
    maker.log.races.push_back(race);
    EXPECT_EQ(roundPrefill(maker.log).races, 5);
}

TEST(RoundStartTest, FindsTheInspectionThatIsThereAndTheOneLeftOpen) {
    RoundLog maker;
    const InspectionId open = maker.inspect("2026-03-01", 2, false);
    maker.inspect("2026-03-15", 4);
    EXPECT_EQ(openInspection(maker.log)->id, open);
    EXPECT_EQ(inspectionOn(maker.log, QDate(2026, 3, 1), 2)->id, open);
    EXPECT_EQ(inspectionOn(maker.log, QDate(2026, 3, 1), 3), nullptr);
    EXPECT_EQ(newestSitting(maker.log, open)->inspection, open);
}

TEST(RoundStartTest, ARoundStartsOpenAndAQuickTestIsCompleteAtOnce) {
    const EngineId engine = EngineId::make();
    const RoundFacts facts{QDate(2026, 3, 1), 2, {}, QStringLiteral(" Pat "), {}};
    const StartInspection round = startOf(engine, facts, true);
    EXPECT_FALSE(round.inspection.closed);
    EXPECT_EQ(round.sitting.inspection, round.inspection.id);
    EXPECT_EQ(round.sitting.inspector, QStringLiteral("Pat"));
    EXPECT_TRUE(startOf(engine, facts, false).inspection.closed);
}

TEST(RoundStartTest, ReadsTemperaturesAsTheContractBoundsThem) {
    EXPECT_EQ(temperatureFromText(u"81,5")->inMilliCelsius(), 81'500);
    EXPECT_EQ(temperatureFromText(u"-40")->inMilliCelsius(), -40'000);
    EXPECT_EQ(temperatureFromText(u"250")->inMilliCelsius(), 250'000);
    for (const char16_t* bad :
         {u"", u"-", u"-40.1", u"250.001", u"hot", u"1.2345", u"8.", u"1e2"}) {
        EXPECT_FALSE(temperatureFromText(bad).has_value()) << QString::fromUtf16(bad).toStdString();
    }
}

} // namespace
} // namespace coilbook
