#include "core/domain/current_readings.h"
#include "tests/ui/pages/bench_fixture.h"
#include "ui/pages/bench_summary.h"
#include "ui/widgets/physical_size.h"

#include <QComboBox>

#include <map>

namespace coilbook::testing {
namespace {

using Kind = BenchMessage::Kind;

/// A season of a set that wears a little differently from spring to spring, then a round that is
/// worked from the numeric keypad alone.
class BenchKeypadTest : public BenchPageTest {
protected:
    BenchKeypadTest() { preferences.setRoundOrder(RoundOrder::ByFiringOrder); }

    void makeSeason(int inspections = 6) {
        m_races = 2 * (inspections - 1);
        makeLogbook();
        for (int i = 0; i < inspections; ++i) {
            inspectWearing(10 * (inspections - i), 2 * i);
        }
        showPage();
    }

    /// What a place reads after so many races: 0.25 lbf a race and a fixed pattern of errors of up
    /// to 0.4 lbf.
    static double pressure(const Place& place, int races) {
        const int cylinder = place.cylinder.number();
        const int wobble = (7 * races + 5 * cylinder + (place.valve == Valve::Intake)) % 9 - 4;
        return 120.0 + 0.5 * cylinder - 0.25 * races + 0.1 * wobble;
    }

    void inspectWearing(int daysAgo, int races) {
        inspect(daysAgo, races, 120);
        RecordReadings retests; // the fixture reads all alike: each is tested again at once
        for (const CurrentHit& hit : currentHits(*session->log())) {
            Reading reading = session->log()->readings[hit.row];
            if (hit.inspection + 1 != session->log()->inspections.size()) {
                continue;
            }
            reading.id = ReadingId::make();
            reading.hit = 2;
            reading.retest = true;
            reading.value = typed(pressure(reading.place, races));
            retests.readings.push_back(reading);
        }
        apply(retests);
    }

    static TypedForce typed(double lbf) {
        return *TypedForce::parse(QString::number(lbf, 'f', 1), ForceUnit::PoundForce);
    }

    /// On the keypad; `E` is its Enter.
    void pad(const QString& keys) {
        for (const QChar key : keys) {
            if (key == QLatin1Char('E')) {
                QTest::keyClick(page->focusWidget(), Qt::Key_Enter, Qt::KeypadModifier);
            } else {
                QTest::keyClick(page->focusWidget(), key.toLatin1(), Qt::KeypadModifier);
            }
        }
    }

    void start() {
        pad(QStringLiteral("E"));
        until([&] { return page->showsRound(); });
        ASSERT_TRUE(page->round().showsCautions());
        pad(QStringLiteral("E"));
        ASSERT_FALSE(page->round().showsCautions());
        waitForBand();
    }

    void waitForBand() {
        until([&] { return panel().expectedText().startsWith(QStringLiteral("expect ")); });
    }

    [[nodiscard]] Place here() const {
        const QStringList words = panel().placeText().split(QLatin1Char(' '));
        return at(words[0].toInt(),
                  words[1] == QLatin1String("I") ? Valve::Intake : Valve::Exhaust);
    }

    /// Types what the spring at hand should read, off by so much, and goes on.
    void read(double off = 0.0) {
        const qsizetype before = readings();
        const QString place = panel().placeText();
        pad(good(off) + QLatin1Char('E'));
        until([&] {
            return readings() > before &&
                   (page->round().showsSummary() || panel().placeText() != place);
        });
    }

    /// What the spring at hand should read, off by so much.
    [[nodiscard]] QString good(double off = 0.0) const {
        return QString::number(pressure(here(), m_races) + off, 'f', 1);
    }

    int m_races = 0; ///< of the engine at the round

    [[nodiscard]] qsizetype readings() const {
        return static_cast<qsizetype>(session->log()->readings.size());
    }
};

TEST_F(BenchKeypadTest, TheCautionsComeBeforeTheFirstSpringAndNotAgain) {
    makeSeason(2);
    pad(QStringLiteral("E"));
    until([&] { return page->showsRound(); });
    ASSERT_TRUE(page->round().showsCautions());
    pad(QStringLiteral("118"));
    EXPECT_TRUE(panel().field().text().isEmpty()) << "they are to be read first";
    pad(QStringLiteral("E"));
    read();
    reopen();
    showPage();
    EXPECT_TRUE(page->showsRound());
    EXPECT_FALSE(page->round().showsCautions());
}

TEST_F(BenchKeypadTest, EachStepSaysHowFarToTurnTheCrankAndWhichCylinderIsThenAtTheTop) {
    makeSeason(2);
    start();
    EXPECT_TRUE(panel().crankText().contains(QStringLiteral("until cylinder 1 ")));
    read();
    EXPECT_TRUE(panel().crankText().contains(QStringLiteral("Leave the crank: cylinder 1 ")));
    for (const int cylinder : {8, 4, 3, 6, 5, 7, 2}) {
        read();
        EXPECT_TRUE(
            panel().crankText().contains(QStringLiteral("90\u00B0 on: cylinder %1 ").arg(cylinder)))
            << panel().crankText().toStdString();
        read();
    }
    read();
    until([&] { return page->round().showsSummary(); });
}

TEST_F(BenchKeypadTest, AWholeRoundWithRepeatedHitsASlipAndARetestNeedsNoOtherKey) {
    makeSeason();
    start();
    // Two hits that agree.
    pad(good() + QLatin1Char('+'));
    until(
        [&] { return panel().hitsText().contains(QStringLiteral("Hit 2")) || readings() == 193; });
    waitForBand();
    read(0.5);
    // A slip: a digit is missing. It is asked about, and taken back with Backspace.
    waitForBand();
    const Place slipped = here();
    pad(QStringLiteral("12E"));
    EXPECT_EQ(panel().message().kind(), Kind::Asks);
    for (int i = 0; i < 2; ++i) {
        QTest::keyClick(page->focusWidget(), Qt::Key_Backspace);
    }
    read();
    EXPECT_EQ(hitsAt(slipped).last(), typed(pressure(slipped, m_races)).text());
    // One reads far below its history, the rest as they should.
    waitForBand();
    const Place low = here();
    read(-6.0);
    for (int i = 3; i < 16; ++i) {
        waitForBand();
        read();
    }
    until([&] { return page->round().showsSummary(); });
    const QString again =
        QStringLiteral("Test these again before you close the round: ") + placeText(low);
    until([&] { return page->round().summary().text().contains(again); });
    EXPECT_TRUE(page->round().summary().text().contains(QStringLiteral("Every spring has been")));
    pad(QStringLiteral("*"));
    EXPECT_EQ(here(), low);
    read();
    until([&] { return page->round().showsSummary(); });
    EXPECT_TRUE(session->log()->readings.back().retest);
    until([&] { return page->round().summary().text().contains(QStringLiteral("Nothing calls")); });
    pad(QStringLiteral("E"));
    until([&] { return page->showsForm(); });
    EXPECT_TRUE(session->log()->inspections.back().closed);
    EXPECT_EQ(readings(), 6 * 32 + 16 + 2);
}

TEST_F(BenchKeypadTest, ATesterThatReadsLowIsToldOfFromTheFourthSpringOn) {
    makeSeason();
    start();
    for (int i = 0; i < 3; ++i) {
        waitForBand();
        read(-7.0);
    }
    waitForBand();
    EXPECT_NE(panel().message().kind(), Kind::Warns) << "three are too few";
    read(-7.0);
    until([&] { return panel().message().kind() == Kind::Warns; });
    EXPECT_TRUE(panel().message().text().contains(QStringLiteral("lbf low")));
    EXPECT_TRUE(panel().message().text().contains(QStringLiteral("adapter")));
    pad(QStringLiteral("1"));
    EXPECT_EQ(panel().message().kind(), Kind::Warns) << "typing does not wipe it away";
    EXPECT_TRUE(panel().field().hasFocus());
}

TEST_F(BenchKeypadTest, AReadingInsideItsBandIsAsExpected) {
    makeSeason();
    start();
    EXPECT_EQ(panel().judgementText(), QString()) << "nothing is typed";
    pad(good());
    EXPECT_EQ(panel().judgementText(), QStringLiteral("as expected"));
}

TEST_F(BenchKeypadTest, AReadingBelowItsBandAsksForAnotherTest) {
    makeSeason();
    start();
    pad(good(-6.0));
    EXPECT_TRUE(panel().judgementText().startsWith(QStringLiteral("below what")));
    pad(QStringLiteral("E"));
    until([&] { return panel().message().text().contains(QStringLiteral("test it again")); });
}

TEST_F(BenchKeypadTest, AReadingAboveItsBandAsksForAnotherTest) {
    makeSeason();
    start();
    pad(good(6.0));
    EXPECT_TRUE(panel().judgementText().startsWith(QStringLiteral("above what")));
}

TEST_F(BenchKeypadTest, WhatIsTooFarOffNeedsAnExplicitYesAndHalfANumberIsNotShoutedAt) {
    makeSeason();
    start();
    pad(QStringLiteral("1"));
    EXPECT_EQ(panel().judgementText(), QString());
    pad(QStringLiteral("8"));
    EXPECT_TRUE(panel().judgementText().startsWith(QStringLiteral("too far off")));
    pad(QStringLiteral("E"));
    EXPECT_EQ(panel().message().kind(), Kind::Asks);
    EXPECT_EQ(readings(), 6 * 32);
    // What a tester sends next takes its place.
    pad(good());
    EXPECT_EQ(panel().judgementText(), QStringLiteral("as expected"));
    panel().field().clear();
    pad(QStringLiteral("18E"));
    QTest::qWait(350);
    pad(QStringLiteral("E"));
    until([&] { return readings() == 6 * 32 + 1; });
}

TEST_F(BenchKeypadTest, HitsThatDifferByMoreThanTheTesterAllowsAskForAnother) {
    makeSeason();
    start();
    const Place first = here();
    pad(good(3.0) + QLatin1Char('+'));
    until([&] { return readings() == 6 * 32 + 1; });
    pad(good(-2.0));
    EXPECT_TRUE(panel().judgementText().startsWith(QStringLiteral("hits differ by")));
    pad(QStringLiteral("E"));
    EXPECT_EQ(panel().message().kind(), Kind::Asks);
    EXPECT_EQ(here(), first);
    pad(QStringLiteral("+"));
    until([&] { return readings() == 6 * 32 + 2; });
    EXPECT_EQ(here(), first) << "for one hit more";
}

TEST_F(BenchKeypadTest, TheReadingIsAtLeastFifteenMillimetresTallOnABenchLaptop) {
    makeSeason(2);
    start();
    pad(QStringLiteral("118"));
    const QFontMetricsF metrics(panel().field().font());
    const double digit = metrics.tightBoundingRect(QStringLiteral("8")).height();
    EXPECT_GE(digit, pixelsOf(15.0, panel().field()));
    EXPECT_TRUE(panel().previousText().startsWith(QStringLiteral("before ")));
}

TEST_F(BenchKeypadTest, SoundsAreOffUntilAskedForAndADeviceIsNotNeeded) {
    EXPECT_FALSE(preferences.benchSounds());
    preferences.setBenchSounds(true);
    makeSeason(2);
    start();
    read();
    pad(QStringLiteral("1E"));
    EXPECT_EQ(panel().message().kind(), Kind::Asks);
}

TEST_F(BenchKeypadTest, AnOwnOrderOfTheEngineIsWalked) {
    engine.layout.ownRound = engine.layout.places();
    std::reverse(engine.layout.ownRound.begin(), engine.layout.ownRound.end());
    preferences.setRoundOrder(RoundOrder::Own);
    makeSeason(2);
    start();
    EXPECT_EQ(here(), at(8, Valve::Exhaust));
    read();
    EXPECT_EQ(here(), at(8, Valve::Intake));
}

} // namespace
} // namespace coilbook::testing
