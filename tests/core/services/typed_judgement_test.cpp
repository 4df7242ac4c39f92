#include "core/services/typed_judgement.h"
#include "tests/core/services/round_log.h"

#include <gtest/gtest.h>

#include <ostream>
#include <random>

namespace coilbook {
namespace {

constexpr Force lbf(double value) {
    return Force::poundsForce(value);
}

const ForceEstimate kBand{lbf(118.0), lbf(116.0), lbf(120.0)};

TypedJudgement judged(const char* text, const std::optional<ForceEstimate>& band = kBand) {
    return judgementOf(QString::fromLatin1(text), ForceUnit::PoundForce, band);
}

TEST(TypedJudgementTest, InsideTheBandItIsAsExpected) {
    for (const char* text : {"116", "118.25", "119,9", "120.0"}) {
        EXPECT_EQ(judged(text), TypedJudgement::AsExpected) << text;
    }
}

TEST(TypedJudgementTest, BelowAndAboveTheBandItSaysSo) {
    EXPECT_EQ(judged("115.9"), TypedJudgement::Below);
    EXPECT_EQ(judged("106"), TypedJudgement::Below);
    EXPECT_EQ(judged("120.5"), TypedJudgement::Above);
}

TEST(TypedJudgementTest, TooFarOffToBeAReadingItSaysSo) {
    EXPECT_EQ(judged("105.9"), TypedJudgement::TooFar);
    EXPECT_EQ(judged("181"), TypedJudgement::TooFar);
    EXPECT_EQ(judged("60"), TypedJudgement::TooFar) << "no further digit mends it";
    EXPECT_EQ(judged("1180"), TypedJudgement::TooFar);
    EXPECT_EQ(judgementOf(lbf(11.8), kBand), TypedJudgement::TooFar);
}

TEST(TypedJudgementTest, TheFirstDigitsOfAGoodReadingAreNotShoutedAt) {
    for (const char* text : {"", "1", "11", "12", "118.", ".", "x", "0"}) {
        EXPECT_EQ(judged(text), TypedJudgement::Open) << text;
    }
    EXPECT_EQ(judgementOf(lbf(11.0), kBand), TypedJudgement::TooFar)
        << "but are asked about when they are to be kept";
}

TEST(TypedJudgementTest, AWideBandMovesWhatIsTooFar) {
    const ForceEstimate wide{lbf(118.0), lbf(110.0), lbf(126.0)};
    EXPECT_EQ(judged("100", wide), TypedJudgement::Below);
    EXPECT_EQ(judged("93.9", wide), TypedJudgement::TooFar);
}

TEST(TypedJudgementTest, WithoutABandNothingIsSaid) {
    EXPECT_EQ(judged("118", std::nullopt), TypedJudgement::NoBand);
    EXPECT_EQ(judged("1", std::nullopt), TypedJudgement::NoBand);
    EXPECT_EQ(judged("", std::nullopt), TypedJudgement::Open);
}

TEST(TypedJudgementTest, JudgesNewtonsByTheirSize) {
    const auto newtons = [](const char* text) {
        return judgementOf(QString::fromLatin1(text), ForceUnit::Newton, kBand);
    };
    EXPECT_EQ(newtons("525"), TypedJudgement::AsExpected); // 118.0 lbf
    EXPECT_EQ(newtons("52"), TypedJudgement::Open);
    EXPECT_EQ(newtons("118"), TypedJudgement::TooFar) << "pounds typed as newtons";
}

TEST(TypedJudgementTest, WhileACredibleReadingIsTypedNoKeyIsEverTooFar) {
    std::mt19937_64 random(5);
    std::uniform_real_distribution<double> middle(20.0, 700.0);
    std::uniform_real_distribution<double> off(-11.9, 11.9);
    for (int draw = 0; draw < 2000; ++draw) {
        const double mean = middle(random);
        const ForceEstimate band{lbf(mean), lbf(mean - 2.0), lbf(mean + 2.0)};
        const QString text = QString::number(mean + off(random), 'f', draw % 3);
        const auto whole = TypedForce::parse(text, ForceUnit::PoundForce);
        ASSERT_TRUE(whole);
        if (judgementOf(whole->force(), band) == TypedJudgement::TooFar) {
            continue; // rounded beyond the edge
        }
        for (qsizetype keys = 1; keys <= text.size(); ++keys) {
            EXPECT_NE(judgementOf(text.left(keys), ForceUnit::PoundForce, band),
                      TypedJudgement::TooFar)
                << qPrintable(text.left(keys)) << " of " << qPrintable(text) << ", " << mean;
        }
    }
}

class HitSpreadTest : public ::testing::Test {
protected:
    [[nodiscard]] HitSpread spread() const {
        const Round round(m_maker.log, m_now, RoundOrder::ByCylinder);
        return spreadOf(round.stops().front(), HitAgreement());
    }

    testing::RoundLog m_maker;
    InspectionId m_now = m_maker.inspect("2026-05-02", 9, false);
    Place m_first = testing::place(1, Valve::Intake);
};

TEST_F(HitSpreadTest, OneHitAgreesWithItself) {
    m_maker.read(m_first, "1I", "118");
    EXPECT_FALSE(spread().isTooWide());
    EXPECT_EQ(spread().hits, 1);
}

TEST_F(HitSpreadTest, WhatIsJustAllowedIsNotTooWideAndMoreIs) {
    m_maker.read(m_first, "1I", "118.1", 1);
    m_maker.read(m_first, "1I", "122.1", 2);
    EXPECT_FALSE(spread().isTooWide()) << "4 lbf, whatever the rounding of doubles";
    m_maker.read(m_first, "1I", "122.2", 3);
    EXPECT_TRUE(spread().isTooWide());
    EXPECT_EQ(spread().hits, 3);
}

TEST_F(HitSpreadTest, TheHitBeingTypedCountsAndAFirstRetestStandsAlone) {
    m_maker.read(m_first, "1I", "118", 1);
    const Round round(m_maker.log, m_now, RoundOrder::ByCylinder);
    const RoundStop& stop = round.stops().front();
    const TypedForce typed(130, 0, ForceUnit::PoundForce);
    EXPECT_TRUE(spreadOf(withHit(stop, typed, false), HitAgreement()).isTooWide());
    EXPECT_FALSE(spreadOf(withHit(stop, typed, true), HitAgreement()).isTooWide());
    EXPECT_EQ(withHit(stop, typed, true).mean(), typed.force());
}

TEST_F(HitSpreadTest, HitsThatARetestReplacesDoNotCount) {
    m_maker.read(m_first, "1I", "118", 1);
    m_maker.read(m_first, "1I", "130", 2);
    m_maker.read(m_first, "1I", "118", 3, true);
    EXPECT_FALSE(spread().isTooWide());
}

} // namespace
} // namespace coilbook
