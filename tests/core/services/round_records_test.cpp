#include "core/services/round_records.h"
#include "tests/core/services/round_log.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::place;
using testing::RoundLog;
using Fault = decltype(Error::fault);

const Place kHere = place(3, Valve::Exhaust);
const Moment kNow{QStringLiteral("2026-04-01T18:00:00.000Z"), 120};

RoundEntry typed(const char* text, bool retest = false) {
    return {QString::fromLatin1(text), ForceUnit::PoundForce, retest, QStringLiteral("S-27")};
}

TEST(RoundRecordsTest, KeepsTheDigitsAndMakesTheSpringWithItsFirstReading) {
    RoundLog maker;
    const InspectionId now = maker.inspect("2026-04-01", 3, false);
    const SittingId sitting = maker.log.sittings.back().id;
    const Round round(maker.log, now, RoundOrder::ByBank);
    const auto record =
        recordOf(round, round.indexOf(kHere).value(), typed("121.50"), sitting, kNow);
    ASSERT_TRUE(record.has_value());
    ASSERT_EQ(record->readings.size(), 1U);
    ASSERT_EQ(record->newSprings.size(), 1U);
    const Reading& reading = record->readings[0];
    EXPECT_EQ(reading.value.text(), QStringLiteral("121.50"));
    EXPECT_EQ(reading.place, kHere);
    EXPECT_EQ(reading.hit, 1);
    EXPECT_EQ(reading.sitting, sitting);
    EXPECT_EQ(reading.author.at, kNow);
    EXPECT_EQ(reading.spring, record->newSprings[0].id);
    EXPECT_EQ(record->newSprings[0].label, QStringLiteral("S-27"));
}

TEST(RoundRecordsTest, AKnownSpringIsReadAgainUnderTheNextNumber) {
    RoundLog maker;
    const InspectionId now = maker.inspect("2026-04-01", 3, false);
    maker.read(kHere, "S-27", "120");
    const Round round(maker.log, now, RoundOrder::ByBank);
    const auto record = recordOf(round, round.indexOf(kHere).value(), typed("119", true),
                                 maker.log.sittings.back().id, kNow);
    ASSERT_TRUE(record.has_value());
    EXPECT_TRUE(record->newSprings.empty());
    EXPECT_EQ(record->readings[0].spring, maker.spring("S-27"));
    EXPECT_EQ(record->readings[0].hit, 2);
    EXPECT_TRUE(record->readings[0].retest);
}

TEST(RoundRecordsTest, ASpringThatComesBackKeepsItsIdentity) {
    RoundLog maker;
    const SpringId known = maker.spring("s-27");
    const InspectionId now = maker.inspect("2026-04-01", 3, false);
    const Round round(maker.log, now, RoundOrder::ByBank);
    const auto record = recordOf(round, round.indexOf(kHere).value(), typed("119"),
                                 maker.log.sittings.back().id, kNow);
    ASSERT_TRUE(record.has_value());
    EXPECT_TRUE(record->newSprings.empty());
    EXPECT_EQ(record->readings[0].spring, known);
}

TEST(RoundRecordsTest, ASpringNeedsAName) {
    RoundLog maker;
    const InspectionId now = maker.inspect("2026-04-01", 3, false);
    const Round round(maker.log, now, RoundOrder::ByBank);
    RoundEntry entry = typed("119");
    entry.springLabel = QStringLiteral("  ");
    const auto record = recordOf(round, 0, entry, maker.log.sittings.back().id, kNow);
    ASSERT_FALSE(record.has_value());
    EXPECT_EQ(record.error().fault, Fault(LogbookFault::EmptyName));
}

class AmendmentTest : public ::testing::Test {
protected:
    AmendmentTest() {
        now = maker.inspect("2026-04-01", 3, false);
        first = maker.read(kHere, "S-27", "161.5");
    }

    RoundHit hit() const {
        const Round round(maker.log, now, RoundOrder::ByBank);
        return round.stops().at(round.indexOf(kHere).value()).hits.at(0);
    }

    RoundLog maker;
    InspectionId now;
    ReadingId first;
    const Authorship author{QStringLiteral("Pat"), kNow, QStringLiteral("slip of the pen")};
};

TEST_F(AmendmentTest, ACorrectionRepeatsTheRowButForItsValue) {
    const auto correction = correctionOf(maker.log, hit(), QStringLiteral("116,5"), author);
    ASSERT_TRUE(correction.has_value());
    const Reading& reading = correction->reading;
    EXPECT_EQ(reading.kind, ReadingKind::Correction);
    EXPECT_EQ(reading.amends, first);
    EXPECT_NE(reading.id, first);
    EXPECT_EQ(reading.value.text(), QStringLiteral("116.5"));
    EXPECT_EQ(reading.hit, 1);
    EXPECT_EQ(reading.sitting, maker.log.readings[0].sitting);
    EXPECT_EQ(reading.author, author);
}

TEST_F(AmendmentTest, ASecondCorrectionAmendsTheFirst) {
    const auto once = correctionOf(maker.log, hit(), QStringLiteral("116.5"), author);
    maker.log.readings.push_back(once->reading);
    EXPECT_TRUE(hit().corrected);
    const auto twice = correctionOf(maker.log, hit(), QStringLiteral("117.5"), author);
    ASSERT_TRUE(twice.has_value());
    EXPECT_EQ(twice->reading.amends, once->reading.id);
}

TEST_F(AmendmentTest, NeedsAReasonAndAChange) {
    Authorship silent = author;
    silent.why = QStringLiteral(" ");
    EXPECT_EQ(correctionOf(maker.log, hit(), QStringLiteral("116"), silent).error().fault,
              Fault(LogbookFault::WhyMissing));
    EXPECT_EQ(withdrawalOf(maker.log, hit(), silent).error().fault,
              Fault(LogbookFault::WhyMissing));
    EXPECT_EQ(correctionOf(maker.log, hit(), QStringLiteral("161.5"), author).error().fault,
              Fault(LogbookFault::NothingToAmend));
}

TEST_F(AmendmentTest, AWithdrawalRepeatsTheValueItTakesBack) {
    const auto withdrawal = withdrawalOf(maker.log, hit(), author);
    ASSERT_TRUE(withdrawal.has_value());
    EXPECT_EQ(withdrawal->reading.kind, ReadingKind::Withdrawal);
    EXPECT_EQ(withdrawal->reading.value.text(), QStringLiteral("161.5"));
    maker.log.readings.push_back(withdrawal->reading);
    const Round round(maker.log, now, RoundOrder::ByBank);
    EXPECT_FALSE(round.stops().at(round.indexOf(kHere).value()).isTested());
}

} // namespace
} // namespace coilbook
