#include "core/domain/current_readings.h"
#include "tests/ui/pages/bench_fixture.h"
#include "ui/pages/bench_correction_bar.h"
#include "ui/pages/bench_summary.h"

#include <QComboBox>
#include <QFile>

namespace coilbook::testing {
namespace {

using Kind = BenchMessage::Kind;

class BenchRoundTest : public BenchPageTest {
protected:
    /// As it is written on screen.
    [[nodiscard]] QString lbf(double value) const {
        return preferences.quantities().forceWithUnit(Force::poundsForce(value));
    }
};

TEST_F(BenchRoundTest, AWholeInspectionTypedByKeyboardIsInTheFileAsTyped) {
    makeLogbook();
    preferences.setRoundOrder(RoundOrder::ByCylinder);
    showPage();
    startRound();
    QStringList typed;
    for (int i = 0; i < 16; ++i) {
        const QString text = i % 2 == 0 ? QStringLiteral("1%1.50").arg(20 + i)
                                        : QStringLiteral("1%1,25").arg(20 + i);
        typed.append(QString(text).replace(QLatin1Char(','), QLatin1Char('.')));
        QTest::keyClicks(page->focusWidget(), text);
        press(Qt::Key_Enter);
        const auto tested = static_cast<qsizetype>(i) + 1;
        until([&] {
            return currentHits(*session->log()).size() == static_cast<std::size_t>(tested);
        });
    }
    until([&] { return page->round().showsSummary(); });
    EXPECT_TRUE(page->round().summary().text().contains(QStringLiteral("16 of 16")));
    press(Qt::Key_Enter);
    until([&] { return page->showsForm(); });

    reopen();
    const std::shared_ptr<const EngineLog> log = session->log();
    ASSERT_EQ(log->inspections.size(), 1U);
    EXPECT_TRUE(log->inspections[0].closed);
    EXPECT_EQ(log->inspections[0].inspectedOn, QDate::currentDate());
    ASSERT_EQ(log->readings.size(), 16U);
    ASSERT_EQ(log->springs.size(), 16U);
    const std::vector<Place> places = log->engine.layout.places();
    for (std::size_t i = 0; i < places.size(); ++i) {
        EXPECT_EQ(hitsAt(places[i]), QStringList(typed[static_cast<qsizetype>(i)]));
    }
}

TEST_F(BenchRoundTest, TheTrendAnswersWhileAReadingIsTypedAndMovesNothing) {
    makeLogbook();
    for (int races = 0; races <= 4; ++races) {
        inspect(40 - 7 * races, races, 125 - races);
    }
    preferences.setRoundOrder(RoundOrder::ByCylinder);
    showPage();
    startRound();
    until([&] { return panel().expectedText().startsWith(QStringLiteral("expect ")); });
    const QRect field = panel().field().geometry();
    type("119");
    EXPECT_TRUE(panel().verdictText().contains(lbf(6.0))) << "the measured loss waits for nothing";
    until([&] { return panel().trendText().contains(QStringLiteral("past the limit")); });
    EXPECT_TRUE(panel().trendText().contains(QStringLiteral("By its trend lost ")));
    EXPECT_TRUE(panel().verdictText().contains(lbf(6.0))) << "and stands beside the trend";
    EXPECT_EQ(panel().field().text(), QStringLiteral("119"));
    EXPECT_TRUE(panel().field().hasFocus());
    EXPECT_EQ(panel().field().geometry(), field);
    press(Qt::Key_Enter);
    waitForSaved();
    EXPECT_EQ(hitsAt(at(1, Valve::Intake)).last(), QStringLiteral("119"));
}

TEST_F(BenchRoundTest, AFastHandLosesNoKey) {
    makeLogbook();
    preferences.setRoundOrder(RoundOrder::ByCylinder);
    showPage();
    startRound();
    for (const char* text : {"120.5", "121.5", "122.5", "123.5"}) {
        QTest::keyClicks(&panel().field(), QString::fromLatin1(text));
        QTest::keyClick(&panel().field(), Qt::Key_Enter);
    }
    until([&] { return currentHits(*session->log()).size() == 4; });
    EXPECT_EQ(hitsAt(at(1, Valve::Intake)), QStringList(QStringLiteral("120.5")));
    EXPECT_EQ(hitsAt(at(2, Valve::Exhaust)), QStringList(QStringLiteral("123.5")));
}

TEST_F(BenchRoundTest, PlusTakesAFurtherHitAndStays) {
    makeLogbook();
    showPage();
    startRound();
    const QString here = panel().placeText();
    type("120.5+");
    until([&] { return panel().hitsText().contains(QStringLiteral("120.5")); });
    EXPECT_EQ(panel().placeText(), here);
    type("121.5");
    EXPECT_TRUE(panel().verdictText().startsWith(QStringLiteral("baseline")));
    press(Qt::Key_Enter);
    until([&] { return panel().placeText() != here; });
    EXPECT_EQ(hitsAt(at(1, Valve::Exhaust)),
              (QStringList{QStringLiteral("120.5"), QStringLiteral("121.5")}));
}

TEST_F(BenchRoundTest, TheVerdictFollowsTheKeysAgainstBaselineAndLimit) {
    makeLogbook();
    inspect(40, 0, 120);
    inspect(20, 3, 118);
    showPage();
    startRound();
    EXPECT_TRUE(panel().beforeText().contains(lbf(118.0)));
    EXPECT_TRUE(panel().beforeText().contains(lbf(120.0)));
    type("116");
    EXPECT_TRUE(panel().verdictText().contains(lbf(4.0)));
    EXPECT_TRUE(panel().verdictText().contains(QStringLiteral("within the limit")));
    press(Qt::Key_Backspace);
    type("5");
    EXPECT_TRUE(panel().verdictText().contains(QStringLiteral("PAST the limit")));
}

TEST_F(BenchRoundTest, ACorrectionAsksForItsReasonInPlaceAndKeepsTheOldValue) {
    makeLogbook();
    showPage();
    startRound();
    type("161.5");
    press(Qt::Key_Enter);
    waitForSaved();
    press(Qt::Key_PageUp);
    press(Qt::Key_Slash);
    EXPECT_EQ(panel().field().text(), QStringLiteral("161.5"));
    type("116.5");
    press(Qt::Key_Enter); // on to the reason
    press(Qt::Key_Enter); // none given
    EXPECT_EQ(panel().message().kind(), Kind::Refused);
    EXPECT_TRUE(panel().message().text().contains(QStringLiteral("needs a reason")));
    type("slip");
    press(Qt::Key_Enter);
    waitForSaved();
    EXPECT_EQ(hitsAt(at(1, Valve::Exhaust)), QStringList(QStringLiteral("116.5")));
    const Reading& correction = session->log()->readings.back();
    EXPECT_EQ(correction.kind, ReadingKind::Correction);
    EXPECT_EQ(correction.author.who, QStringLiteral("Pat Miller"));
    EXPECT_EQ(correction.author.why, QStringLiteral("slip"));
    EXPECT_EQ(session->log()->readings.front().value.text(), QStringLiteral("161.5"));
    EXPECT_TRUE(panel().field().hasFocus());
}

TEST_F(BenchRoundTest, AHitCanBeWithdrawn) {
    makeLogbook();
    showPage();
    startRound();
    type("120.5+");
    until([&] { return panel().hitsText().contains(QStringLiteral("120.5")); });
    press(Qt::Key_Slash);
    panel().correction().focusReason();
    type("wrong spring");
    click("Withdraw this hit");
    until([&] { return currentHits(*session->log()).empty(); });
    EXPECT_EQ(session->log()->readings.size(), 2U) << "nothing is deleted";
}

TEST_F(BenchRoundTest, ARetestCrossesTheFirstHitsOut) {
    makeLogbook();
    showPage();
    startRound();
    type("120.5+");
    until([&] { return panel().hitsText().contains(QStringLiteral("120.5")); });
    type("*121.0+");
    until([&] { return panel().hitsText().contains(QStringLiteral("re-test")); });
    EXPECT_TRUE(panel().hitsText().contains(QStringLiteral("120.5 crossed out")));
    EXPECT_TRUE(session->log()->readings.back().retest);
}

TEST_F(BenchRoundTest, ASkippedSpringStaysToDoAndTheSummaryNamesIt) {
    makeLogbook();
    preferences.setRoundOrder(RoundOrder::ByCylinder);
    showPage();
    startRound();
    press(Qt::Key_Minus);
    EXPECT_EQ(panel().placeText(), QStringLiteral("1 E"));
    type("120.5");
    press(Qt::Key_Enter);
    waitForSaved();
    click("Finish the round");
    EXPECT_TRUE(page->round().showsSummary());
    EXPECT_TRUE(page->round().summary().text().contains(QStringLiteral("Not tested: 1 I, 2 I")));
    press(Qt::Key_PageUp);
    EXPECT_FALSE(page->round().showsSummary());
    EXPECT_TRUE(panel().field().hasFocus());
}

TEST_F(BenchRoundTest, AfterARestartItGoesOnExactlyWhereItWasLeft) {
    makeLogbook();
    preferences.setRoundOrder(RoundOrder::ByFiringOrder);
    showPage();
    startRound();
    type("120.5");
    press(Qt::Key_Enter);
    waitForSaved();
    press(Qt::Key_Minus);
    EXPECT_EQ(panel().placeText(), QStringLiteral("8 I"));
    type("11");
    reopen();
    showPage();
    ASSERT_TRUE(page->showsRound());
    EXPECT_EQ(panel().placeText(), QStringLiteral("8 I"));
    EXPECT_EQ(panel().field().text(), QStringLiteral("11"));
    EXPECT_TRUE(panel().field().hasFocus());
}

TEST_F(BenchRoundTest, WhatIsHalfTypedComesBackWhenWalkingOnAndBack) {
    makeLogbook();
    showPage();
    startRound();
    type("12");
    press(Qt::Key_PageDown);
    EXPECT_EQ(panel().field().text(), QString());
    press(Qt::Key_PageUp);
    EXPECT_EQ(panel().field().text(), QStringLiteral("12"));
}

TEST_F(BenchRoundTest, ALeftRoundIsOfferedAgain) {
    makeLogbook();
    showPage();
    startRound();
    type("12");
    click("Leave, go on later");
    ASSERT_TRUE(page->showsForm());
    click("Go on with the round");
    ASSERT_TRUE(page->showsRound());
    EXPECT_EQ(panel().field().text(), QStringLiteral("12"));
}

TEST_F(BenchRoundTest, AReadingOutOfBoundsIsRefusedWithASentenceAndStays) {
    makeLogbook();
    showPage();
    startRound();
    type("1200");
    press(Qt::Key_Enter);
    EXPECT_EQ(panel().message().kind(), Kind::Refused);
    EXPECT_TRUE(panel().message().text().contains(QStringLiteral("at most 1000 lbf")));
    EXPECT_EQ(panel().field().text(), QStringLiteral("1200"));
    panel().field().clear();
    type("12x");
    press(Qt::Key_Enter);
    EXPECT_TRUE(panel().message().text().contains(QStringLiteral("is not a reading")));
    EXPECT_TRUE(currentHits(*session->log()).empty());
}

TEST_F(BenchRoundTest, AReadingFarFromTheSetIsAskedAboutAndKeptOnASecondEnter) {
    makeLogbook();
    inspect(20, 0, 120);
    showPage();
    startRound();
    type("107");
    press(Qt::Key_Enter);
    EXPECT_EQ(panel().message().kind(), Kind::Asks);
    EXPECT_EQ(hitsAt(at(1, Valve::Exhaust)).size(), 1);
    press(Qt::Key_Enter); // the same push of the key, or a tester's line feed
    EXPECT_EQ(panel().message().kind(), Kind::Asks);
    sayYes();
    waitForSaved();
    EXPECT_EQ(hitsAt(at(1, Valve::Exhaust)).last(), QStringLiteral("107"));
}

TEST_F(BenchRoundTest, AFailedSaveSaysSoStaysTypedAndIsRetriedUnderTheSameIds) {
    makeLogbook();
    showPage();
    startRound();
    const QString away = folder.filePath(QStringLiteral("away"));
    ASSERT_TRUE(QFile::rename(path(), away));
    type("120.5");
    press(Qt::Key_Enter);
    until([&] { return panel().message().kind() == Kind::NotSaved; });
    EXPECT_EQ(panel().field().text(), QStringLiteral("120.5"));
    EXPECT_EQ(panel().placeText(), QStringLiteral("1 E"));
    EXPECT_TRUE(currentHits(*session->log()).empty());

    ASSERT_TRUE(QFile::rename(away, path()));
    press(Qt::Key_Enter);
    waitForSaved();
    EXPECT_EQ(hitsAt(at(1, Valve::Exhaust)), QStringList(QStringLiteral("120.5")));
    EXPECT_EQ(session->log()->springs.size(), 1U);
}

TEST_F(BenchRoundTest, NothingMovesWhileTyping) {
    makeLogbook();
    inspect(20, 0, 120);
    showPage();
    startRound();
    const auto places = [&] {
        QList<QRect> all;
        for (const QWidget* widget : page->findChildren<QWidget*>()) {
            if (widget->isVisible()) {
                all.append(QRect(widget->mapTo(page.get(), QPoint()), widget->size()));
            }
        }
        return all;
    };
    const QList<QRect> before = places();
    type("11");
    EXPECT_EQ(places(), before);
    type("4.25");
    QTest::qWait(300); // the draft is kept meanwhile
    EXPECT_EQ(places(), before);
    EXPECT_TRUE(panel().field().hasFocus());
}

} // namespace
} // namespace coilbook::testing
