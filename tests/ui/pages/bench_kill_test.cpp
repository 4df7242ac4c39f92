#include "core/domain/current_readings.h"
#include "tests/ui/pages/bench_fixture.h"

#include <QProcess>

namespace coilbook::testing {
namespace {

/// The window types in another process, which is killed without a word (SIGKILL); then it is opened
/// again here.
class BenchKillTest : public BenchPageTest {
protected:
    BenchKillTest() { preferences.setRoundOrder(RoundOrder::ByFiringOrder); }

    void makeLogbookAndLetGo() {
        makeLogbook();
        inspect(40, 0, 122);
        inspect(20, 3, 121);
        session.reset(); // the other process is to hold the logbook
        settings.sync();
    }

    void typeAndKill(const char* keys) {
        QProcess driver;
        driver.start(QStringLiteral(COILBOOK_BENCH_DRIVER),
                     {path(), settings.fileName(), QString::fromLatin1(keys)});
        ASSERT_TRUE(driver.waitForReadyRead(30'000)) << driver.readAllStandardError().toStdString();
        ASSERT_TRUE(driver.readLine().startsWith("typed"));
        driver.kill();
        ASSERT_TRUE(driver.waitForFinished());
        ASSERT_EQ(driver.exitStatus(), QProcess::CrashExit);
    }

    void resume() {
        reopen();
        showPage();
        ASSERT_TRUE(page->showsRound());
        ASSERT_FALSE(page->round().showsCautions());
    }

    [[nodiscard]] QString lastAt(const Place& place) const { return hitsAt(place).last(); }
};

TEST_F(BenchKillTest, AfterAKillTheRoundGoesOnAtTheSameSpringWithWhatWasTyped) {
    makeLogbookAndLetGo();
    typeAndKill("EE120.5Ew121+w12d");
    resume();
    EXPECT_EQ(panel().placeText(), QStringLiteral("1 E"));
    EXPECT_EQ(panel().field().text(), QStringLiteral("12"));
    EXPECT_EQ(lastAt(at(1, Valve::Intake)), QStringLiteral("120.5"));
    EXPECT_EQ(lastAt(at(1, Valve::Exhaust)), QStringLiteral("121"));
    type("0.5");
    press(Qt::Key_Enter);
    waitForSaved();
    EXPECT_EQ(lastAt(at(1, Valve::Exhaust)), QStringLiteral("120.5"));
    EXPECT_EQ(panel().placeText(), QStringLiteral("8 I"));
    EXPECT_TRUE(panel().crankText().contains(QStringLiteral("90\u00B0")));
}

TEST_F(BenchKillTest, ARetestThatWasBeingTypedIsStillARetest) {
    makeLogbookAndLetGo();
    typeAndKill("EE120.5EwP*119d");
    resume();
    EXPECT_EQ(panel().placeText(), QStringLiteral("1 I"));
    EXPECT_EQ(panel().field().text(), QStringLiteral("119"));
    press(Qt::Key_Enter);
    waitForSaved();
    EXPECT_TRUE(session->log()->readings.back().retest);
}

TEST_F(BenchKillTest, KilledAtTheVeryEnterAReadingIsSavedOrStillTypedAndNeverTwice) {
    makeLogbookAndLetGo();
    typeAndKill("EE120.5dE");
    resume();
    const bool saved = panel().placeText() == QStringLiteral("1 E");
    if (saved) {
        EXPECT_EQ(hitsAt(at(1, Valve::Intake)).size(), 3);
        EXPECT_EQ(panel().field().text(), QString());
    } else {
        EXPECT_EQ(panel().placeText(), QStringLiteral("1 I"));
        EXPECT_EQ(hitsAt(at(1, Valve::Intake)).size(), 2);
        EXPECT_EQ(panel().field().text(), QStringLiteral("120.5"));
    }
}

} // namespace
} // namespace coilbook::testing
