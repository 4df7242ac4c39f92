#include "core/services/round_closing.h"
#include "tests/core/services/round_log.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::place;

constexpr Force kLimit = Force::poundsForce(5.0);

/// Four cylinders' intakes with a baseline of 120 lbf; the round follows in each test.
class RoundClosingTest : public ::testing::Test {
protected:
    RoundClosingTest() {
        m_maker.inspect("2026-04-01", 0);
        for (int cylinder = 1; cylinder <= 4; ++cylinder) {
            read(cylinder, "120");
        }
        m_now = m_maker.inspect("2026-05-02", 9, false);
    }

    void read(int cylinder, const char* value, int hit = 1, bool retest = false) {
        m_maker.read(place(cylinder, Valve::Intake), labelOf(cylinder).constData(), value, hit,
                     retest);
    }

    static QByteArray labelOf(int cylinder) { return QByteArray::number(cylinder) + "I"; }

    [[nodiscard]] SpringId spring(int cylinder) {
        return m_maker.spring(labelOf(cylinder).constData());
    }

    [[nodiscard]] QString places(const std::vector<std::size_t>& stops) const {
        const Round round(m_maker.log, m_now, RoundOrder::ByCylinder);
        QStringList texts;
        for (const std::size_t stop : stops) {
            texts << placeText(round.stops()[stop].place);
        }
        return texts.join(QLatin1Char(','));
    }

    [[nodiscard]] RoundClosing closing(const Assessment* assessment = nullptr,
                                       const RoundReview* review = nullptr) const {
        return closingOf(Round(m_maker.log, m_now, RoundOrder::ByCylinder), kLimit, assessment,
                         review);
    }

    testing::RoundLog m_maker;
    InspectionId m_now;
};

TEST_F(RoundClosingTest, WithoutAnEstimateTheMeasuredRuleStandsAndAsksForARetest) {
    read(1, "119");
    read(2, "114.5");
    const RoundClosing now = closing();
    EXPECT_EQ(now.measured.tested, 2U);
    EXPECT_EQ(places(now.pastLimit), QStringLiteral("2 I"));
    EXPECT_EQ(places(now.retest), QStringLiteral("2 I"));
    EXPECT_TRUE(now.repeat.empty() && now.due.empty());
}

TEST_F(RoundClosingTest, WhatTheEstimateSaysIsListedAndPastByBothNeedsNoRetest) {
    read(1, "119");
    read(2, "114.5");
    read(3, "117");
    read(4, "118");
    Assessment assessment;
    const auto add = [&](int cylinder, Standing standing, std::optional<PastBy> by, bool off) {
        SpringAssessment assessed;
        assessed.id = spring(cylinder);
        assessed.standing = standing;
        assessed.pastBy = by;
        assessed.offTrend = off;
        assessment.springs.push_back(assessed);
    };
    add(1, Standing::Sound, {}, false);
    add(2, Standing::PastLimit, PastBy::Both, false);
    add(3, Standing::Due, {}, true);
    add(4, Standing::PastLimit, PastBy::Estimate, false);
    const RoundClosing now = closing(&assessment);
    EXPECT_EQ(places(now.pastLimit), QStringLiteral("2 I,4 I"));
    EXPECT_EQ(places(now.due), QStringLiteral("3 I"));
    EXPECT_EQ(places(now.retest), QStringLiteral("3 I"));
}

TEST_F(RoundClosingTest, HitsThatDisagreeAreToBeRepeatedUntilTheRetestAgrees) {
    read(1, "119", 1);
    read(1, "113.5", 2);
    EXPECT_EQ(places(closing().repeat), QStringLiteral("1 I"));
    EXPECT_EQ(places(closing().retest), QStringLiteral("1 I"));
    read(1, "119", 3, true);
    EXPECT_TRUE(closing().repeat.empty() && closing().retest.empty());
    read(1, "113.5", 4, true);
    EXPECT_EQ(places(closing().retest), QStringLiteral("1 I"));
}

TEST_F(RoundClosingTest, WhatFellOutsideItsBandIsOnTheShortListUntilItIsTestedAgain) {
    read(1, "119");
    read(2, "116");
    RoundReview review;
    const ForceEstimate band{Force::poundsForce(119), Force::poundsForce(117.5),
                             Force::poundsForce(120.5)};
    review.expected = {{spring(1), band}, {spring(2), band}};
    EXPECT_EQ(places(closing(nullptr, &review).retest), QStringLiteral("2 I"));
    read(2, "116.5", 2, true);
    EXPECT_TRUE(closing(nullptr, &review).retest.empty());
}

TEST_F(RoundClosingTest, TheRoundsCommonShiftComesWithTheReview) {
    EXPECT_FALSE(closing().check.has_value());
    RoundReview review;
    review.check = RoundCheck{-2.5, {}, 6};
    EXPECT_EQ(closing(nullptr, &review).check, review.check);
}

} // namespace
} // namespace coilbook
