#include "core/wording/wording.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using Kind = ReasonKind;

constexpr Force lbf(double value) {
    return Force::poundsForce(value);
}

class ReasonSentencesTest : public ::testing::Test {
protected:
    ReasonSentencesTest() {
        m_spring.place = {Cylinder(3), Valve::Exhaust};
        m_spring.label = QStringLiteral("S-27");
    }

    QString say(Kind kind, const std::vector<Force>& forces = {},
                const std::vector<std::optional<int>>& counts = {}) const {
        return wording::reason({kind, forces, counts}, m_spring, m_assessment,
                               Quantities(m_unit, QLocale::c()));
    }

    SpringAssessment m_spring;
    Assessment m_assessment;
    ForceUnit m_unit = ForceUnit::PoundForce;
};

TEST_F(ReasonSentencesTest, LossAndRateAreToldWithTheirLikelyRange) {
    m_spring.loss = ForceEstimate{lbf(3.9), lbf(3.1), lbf(4.4)};
    EXPECT_EQ(say(Kind::LossAndRate, {lbf(3.9), lbf(0.433)}, {9}),
              QStringLiteral("Cylinder 3 exhaust lost about 3.9 lbf in 9 races (likely between 3.1 "
                             "and 4.4 lbf), 0.43 lbf a race."));
    m_unit = ForceUnit::Newton;
    // 3.9, 3.1, 4.4 and 0.433 lbf are 17.3, 13.8, 19.6 and 1.93 N.
    EXPECT_EQ(say(Kind::LossAndRate, {lbf(3.9), lbf(0.433)}, {9}),
              QStringLiteral("Cylinder 3 exhaust lost about 17 N in 9 races (likely between 14 and "
                             "20 N), 1.9 N a race."));
}

TEST_F(ReasonSentencesTest, ASpringThatGainedIsSaidToHaveLostNothing) {
    m_spring.loss = ForceEstimate{lbf(-0.2), lbf(-0.8), lbf(0.4)};
    EXPECT_EQ(
        say(Kind::LossAndRate, {lbf(-0.2), lbf(-0.2)}, {1}),
        QStringLiteral("Cylinder 3 exhaust shows no loss after 1 race (likely between 0.0 and "
                       "0.4 lbf)."));
}

TEST_F(ReasonSentencesTest, TheRacesLeftAreToldAsFarAsTheyAreKnown) {
    EXPECT_EQ(say(Kind::ReachesLimit, {lbf(5)}, {2, 3, 5}),
              QStringLiteral("It reaches 5.0 lbf in about 3 races (2 to 5)."));
    EXPECT_EQ(say(Kind::ReachesLimit, {lbf(5)}, {1, 1, 1}),
              QStringLiteral("It reaches 5.0 lbf in about 1 race."));
    EXPECT_EQ(say(Kind::ReachesLimit, {lbf(5)}, {20, 41, {}}),
              QStringLiteral("It reaches 5.0 lbf in about 41 races (20 to more than 60)."));
    EXPECT_EQ(say(Kind::ReachesLimit, {lbf(5)}, {20, {}, {}}),
              QStringLiteral("It may reach 5.0 lbf in 20 races, but more likely not within 60 "
                             "races."));
    EXPECT_EQ(say(Kind::ReachesLimit, {lbf(5)}, {0, 0, 4}),
              QStringLiteral("It has most likely reached 5.0 lbf by now."));
    EXPECT_EQ(say(Kind::NotWithinHorizon, {lbf(5)}),
              QStringLiteral("As it goes now it does not reach 5.0 lbf within 60 races."));
}

TEST_F(ReasonSentencesTest, PastByMeasurementAloneIsNotToldToBeSwappedAtOnce) {
    m_spring.pastBy = PastBy::Measured;
    EXPECT_FALSE(say(Kind::PastByMeasurement, {lbf(5.3), lbf(5)}).contains(QStringLiteral("swap")));
    EXPECT_TRUE(
        say(Kind::TestAgainBeforeSwapping).contains(QStringLiteral("Test again before swapping")));
    m_spring.pastBy = PastBy::Both;
    EXPECT_EQ(say(Kind::PastByMeasurement, {lbf(5.3), lbf(5)}),
              QStringLiteral("Its newest reading lies 5.3 lbf below its baseline; the limit is 5.0 "
                             "lbf: swap it before the next race."));
}

TEST_F(ReasonSentencesTest, AnOffTrendSpringIsToBeTestedAgainAndLookedOver) {
    const QString text = say(Kind::OffTrend, {lbf(110.2)});
    EXPECT_TRUE(text.contains(QStringLiteral("110.2 lbf, fell below what its own history allows")))
        << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("crack")));
}

TEST_F(ReasonSentencesTest, AShiftSaysItsDirectionAndPointsAtTheTester) {
    for (const auto& [shift, words] : {std::pair(-1.7, "1.7 lbf low"), {1.7, "1.7 lbf high"}}) {
        const QString newest = say(Kind::InspectionShifted, {lbf(shift)}, {9});
        EXPECT_TRUE(newest.contains(QString::fromLatin1(words))) << newest.toStdString();
        EXPECT_TRUE(newest.contains(QStringLiteral("tester"))) << newest.toStdString();
        const QString earlier = say(Kind::EarlierShifted, {lbf(shift)}, {4});
        EXPECT_TRUE(earlier.contains(QString::fromLatin1(words))) << earlier.toStdString();
        EXPECT_TRUE(earlier.contains(QStringLiteral("after 4 races"))) << earlier.toStdString();
    }
}

TEST_F(ReasonSentencesTest, EveryReasonIsAWholeSentenceEvenWithNothingToFillIn) {
    for (int kind = 0; kind <= static_cast<int>(Kind::FitFailed); ++kind) {
        const QString text = say(static_cast<Kind>(kind));
        SCOPED_TRACE(text.toStdString());
        EXPECT_TRUE(text.endsWith(QLatin1Char('.')));
        EXPECT_FALSE(text.contains(QLatin1Char('%')));
        EXPECT_FALSE(text.contains(QLatin1Char('!')));
    }
}

// No jargon of statistics on screen.
TEST_F(ReasonSentencesTest, TheUsersSayIsNamedAsSuch) {
    EXPECT_EQ(say(Kind::SetAsideByUser, {lbf(117.25)}, {6}),
              QStringLiteral("The reading of 117.3 lbf after race 6 was set aside by the user and "
                             "is not counted; it stays in the logbook."));
    EXPECT_TRUE(say(Kind::DropConfirmed, {lbf(6.0)}, {6})
                    .startsWith(QStringLiteral(
                        "It lost about 6.0 lbf at once by race 6, a drop confirmed by the user")));
    EXPECT_EQ(say(Kind::MeasuredAnew, {lbf(0.5)}, {5, static_cast<int>(LevelChangeKind::Retainer)}),
              QStringLiteral("It got another retainer: the measured loss starts again from the "
                             "reading after race 5, with the 0.5 lbf measured before; the step "
                             "between is no wear."));
}

TEST_F(ReasonSentencesTest, OtherRunningIsToldBesideTheRaces) {
    m_spring.loss = ForceEstimate{lbf(3.9), lbf(3.1), lbf(4.4)};
    EXPECT_EQ(say(Kind::LossAndRate, {lbf(3.9), lbf(0.433)}, {9, 400}),
              QStringLiteral("Cylinder 3 exhaust lost about 3.9 lbf in 9 races and running worth "
                             "0.4 races (likely between 3.1 and 4.4 lbf), 0.43 lbf a race."));
}

TEST_F(ReasonSentencesTest, ALossMeasuredAnewIsNotCalledADistanceFromTheBaseline) {
    m_spring.reasons = {{Kind::MeasuredAnew, {lbf(0.5)}, {5, 0}}};
    EXPECT_EQ(say(Kind::PastByMeasurement, {lbf(5.5), lbf(5.0)}),
              QStringLiteral("As measured it has lost 5.5 lbf, the change of its level taken out; "
                             "the limit is 5.0 lbf."));
}

TEST_F(ReasonSentencesTest, NoReasonSpeaksLikeAStatistician) {
    m_spring.loss = ForceEstimate{lbf(3.9), lbf(3.1), lbf(4.4)};
    for (int kind = 0; kind <= static_cast<int>(Kind::FitFailed); ++kind) {
        const QString text = say(static_cast<Kind>(kind), {lbf(5.3), lbf(5)}, {1, 2, 3}).toLower();
        for (const char* word : {"interval", "confidence", "regression", "estimate", "probability",
                                 "deviation", "residual", "median", "posterior"}) {
            EXPECT_FALSE(text.contains(QString::fromLatin1(word))) << text.toStdString();
        }
    }
}

} // namespace
} // namespace coilbook
