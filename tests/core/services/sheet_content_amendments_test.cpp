#include "core/services/sheet_content_amendments.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {

namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

QString text(const char* latin1) {
    return QString::fromLatin1(latin1);
}

/// A number and its unit are not torn apart at the end of a line.
QString force(const char* digits, const char* unit) {
    return text(digits) + QLatin1Char(' ') + text(unit);
}

Moment at(const char* utc, int offsetMinutes = 0) {
    return {text(utc) + text(".000Z"), offsetMinutes};
}

class SheetAmendmentsTest : public ::testing::Test {
protected:
    SheetAmendmentsTest() {
        m_builder.inspection(QDate(2026, 4, 18), 2);
        m_earlier = m_builder.reading(exhaust(3), text("S-03"), text("121.5"));
        m_builder.inspection(QDate(2026, 5, 2), 4);
        m_newest = m_builder.reading(exhaust(3), text("S-03"), text("171.25"));
    }

    void amend(const ReadingId& of, const char* lbf, const Moment& when,
               ReadingKind kind = ReadingKind::Correction) {
        m_builder.amendment(of, text(lbf), kind);
        m_builder.log().readings.back().author = {text("Shop hand"), when, text("digits swapped")};
    }

    [[nodiscard]] std::vector<SheetAmendment> amendments(std::optional<QDate> asOf = {}) {
        const EngineLog& log = m_builder.log();
        return sheetAmendmentsOf(log, historyOf(log, asOf),
                                 Quantities(ForceUnit::PoundForce, QLocale::c()));
    }

    LogBuilder m_builder;
    ReadingId m_earlier;
    ReadingId m_newest;
};

} // namespace

TEST_F(SheetAmendmentsTest, TellOldAndNewValueByWhomAndWhy) {
    amend(m_newest, "117.25", at("2026-05-02T17:00:00"));
    EXPECT_EQ(amendments(),
              (std::vector<SheetAmendment>{{text("2026-05-02"), text("3 E, hit 1 of 2026-05-02"),
                                            force("171.25", "lbf"), force("117.25", "lbf"),
                                            text("Shop hand"), text("digits swapped")}}));
}

TEST_F(SheetAmendmentsTest, CountFromTheDayOfThePreviousInspection) {
    amend(m_earlier, "121.0", at("2026-04-17T20:00:00"));
    EXPECT_TRUE(amendments().empty());
    amend(m_earlier, "121.25", at("2026-04-18T20:00:00"));
    EXPECT_EQ(amendments().size(), 1U);
}

TEST_F(SheetAmendmentsTest, GoByTheLocalDayOfWhoeverAmended) {
    amend(m_earlier, "121.0", at("2026-04-17T23:00:00", 120)); // 01:00 on the 18th
    ASSERT_EQ(amendments().size(), 1U);
    EXPECT_EQ(amendments().front().on, text("2026-04-18"));
}

TEST_F(SheetAmendmentsTest, AreListedWhereTheDayIsNotKnown) {
    amend(m_earlier, "121.0", {});
    ASSERT_EQ(amendments().size(), 1U);
    EXPECT_EQ(amendments().front().on, QString());
}

TEST_F(SheetAmendmentsTest, StandNewestFirst) {
    amend(m_newest, "117.25", at("2026-05-02T17:00:00"));
    amend(m_earlier, "121.0", at("2026-05-03T08:00:00"));
    ASSERT_EQ(amendments().size(), 2U);
    EXPECT_EQ(amendments().front().newValue, force("121.0", "lbf"));
}

TEST_F(SheetAmendmentsTest, LeaveOutWhatBelongsToLaterDays) {
    amend(m_newest, "117.25", at("2026-05-02T17:00:00"));
    EXPECT_TRUE(amendments(QDate(2026, 4, 18)).empty());
}

TEST_F(SheetAmendmentsTest, TellAWithdrawalAndASecondCorrection) {
    amend(m_newest, "117.25", at("2026-05-02T17:00:00"));
    const ReadingId corrected = m_builder.log().readings.back().id;
    amend(corrected, "117.25", at("2026-05-02T18:00:00"), ReadingKind::Withdrawal);
    ASSERT_EQ(amendments().size(), 2U);
    EXPECT_EQ(amendments().front().oldValue, force("117.25", "lbf"));
    EXPECT_EQ(amendments().front().newValue, text("withdrawn"));
}

TEST_F(SheetAmendmentsTest, NameOnlyWhatACorrectionChanged) {
    amend(m_newest, "171.25", at("2026-05-02T17:00:00"));
    m_builder.log().readings.back().place = intake(3);
    m_builder.log().readings.back().note = text("wrong valve");
    ASSERT_EQ(amendments().size(), 1U);
    EXPECT_EQ(amendments().front().oldValue, text("3 E, (none)"));
    EXPECT_EQ(amendments().front().newValue, text("3 I, wrong valve"));
}

TEST_F(SheetAmendmentsTest, HoldAmendedFactsOfTheRecordsToo) {
    m_builder.race(3, QDate(2026, 4, 25));
    EngineLog& log = m_builder.log();
    log.amendments.push_back({AmendmentId::make(),
                              Subject::Race,
                              log.races.front().id.uuid(),
                              text("raced_on"),
                              text("2026-04-24"),
                              text("2026-04-25"),
                              {text("Shop hand"), at("2026-04-26T09:00:00"), text("rained out")}});
    ASSERT_EQ(amendments().size(), 1U);
    EXPECT_TRUE(amendments().front().what.startsWith(text("Race 3, ")))
        << amendments().front().what.toStdString();
    EXPECT_EQ(amendments().front().oldValue, text("2026-04-24"));
    EXPECT_EQ(amendments().front().why, text("rained out"));
}

} // namespace coilbook
