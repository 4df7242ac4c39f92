#include "core/services/round_start.h"
#include "core/storage/logbook_store.h"
#include "core/wording/waiting_words.h"
#include "tests/support/heartbeat.h"
#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/main_window.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_page.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/reading_field.h"
#include "ui/window/logbook_state.h"

#include <QFile>
#include <QProcess>
#include <QPushButton>

#include <unistd.h>

using namespace coilbook;

namespace {

/// The real window while its logbook is not as it should be.
class LogbookStateTest : public coilbook::testing::LogbookFixture {
protected:
    void SetUp() override {
        preferences.setPersonName(QStringLiteral("Pat Miller"));
        session.keepWaiting(spool());
    }

    [[nodiscard]] QString spool() const { return file(QStringLiteral("own/waiting.sqlite")); }

    [[nodiscard]] QString logbook() const { return file(QStringLiteral("season.coilbook")); }

    [[nodiscard]] QString away() const { return file(QStringLiteral("elsewhere")); }

    void showWindow() {
        window = std::make_unique<MainWindow>(session, preferences);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }

    /// An engine whose round is open at the bench, its first reading saved.
    void startRound() {
        showWindow();
        makeLogbook();
        engine = addEngine(QStringLiteral("Blue"));
        const StartInspection start = startOf(
            engine.id, {QDate::currentDate(), 0, {}, QStringLiteral("Pat Miller"), {}}, true);
        put(start);
        session.selectEngine({});
        ASSERT_TRUE(waitFor([&] { return session.log() == nullptr; }));
        session.selectEngine(engine.id);
        ASSERT_TRUE(waitFor([&] { return page() != nullptr && page()->showsRound(); }));
        heedCautions();
        type("130");
        ASSERT_TRUE(waitFor([&] { return says(BenchMessage::Kind::Saved); }));
    }

    void heedCautions() const {
        if (page()->round().showsCautions()) {
            QTest::keyClick(page()->focusWidget(), Qt::Key_Return);
        }
    }

    [[nodiscard]] BenchPage* page() const { return qobject_cast<BenchPage*>(window->page()); }

    [[nodiscard]] bool says(BenchMessage::Kind kind) const {
        return page()->round().panel().message().kind() == kind;
    }

    void type(const char* text) const {
        QTest::keyClicks(page()->focusWidget(), QString::fromLatin1(text));
        QTest::keyClick(page()->focusWidget(), Qt::Key_Return);
    }

    [[nodiscard]] ::testing::AssertionResult tells(const char* part) const {
        const QString wanted = QString::fromUtf8(part);
        if (QTest::qWaitFor([&] { return window->strip().sentence().contains(wanted); },
                            kPatienceMs)) {
            return ::testing::AssertionSuccess();
        }
        return ::testing::AssertionFailure() << window->strip().sentence().toStdString();
    }

    [[nodiscard]] QPushButton* wayOut(const char* text) const {
        for (QPushButton* button : window->strip().findChildren<QPushButton*>()) {
            if (button->text() == QString::fromUtf8(text) && button->isVisible()) {
                return button;
            }
        }
        return nullptr;
    }

    [[nodiscard]] std::size_t storedReadings() const {
        const Result<LogbookStore> store = LogbookStore::open(logbook(), OpenMode::ReadOnly);
        return store ? store->engineLog(engine.id)->readings.size() : 0;
    }

    Engine engine;
    std::unique_ptr<MainWindow> window;
};

TEST_F(LogbookStateTest, AReadingThatCannotBeSavedIsShownAsWaitingUntilItIs) {
    startRound();
    ASSERT_TRUE(QFile::rename(logbook(), away()));
    type("129.5");
    ASSERT_TRUE(waitFor([&] { return says(BenchMessage::Kind::Waiting); }));
    EXPECT_TRUE(tells("was moved, deleted or replaced"));
    EXPECT_TRUE(tells("not yet in the logbook: 1 reading."));
    EXPECT_EQ(window->statusText(),
              QStringLiteral("NOT yet in season.coilbook, waiting on this computer: 1 reading."));
    EXPECT_NE(wayOut("Save what is waiting elsewhere…"), nullptr);
    type("129"); // the round goes on
    EXPECT_TRUE(tells("not yet in the logbook: 2 readings."));
    ASSERT_TRUE(QFile::rename(away(), logbook()));
    QPushButton* tryNow = wayOut("Try now");
    ASSERT_NE(tryNow, nullptr);
    tryNow->click();
    EXPECT_TRUE(tells("is saved in the logbook now: 2 readings."));
    EXPECT_EQ(window->statusText(), QStringLiteral("All entries are saved in season.coilbook."));
    EXPECT_EQ(storedReadings(), 3U);
}

TEST_F(LogbookStateTest, TheWindowNeverStandsStillWhileAnotherProgramHoldsTheLogbook) {
    startRound();
    QProcess other;
    other.start(QStringLiteral("sqlite3"), {logbook()});
    other.write(".timeout 5000\nBEGIN EXCLUSIVE;\n.system echo held\n"); // an answer of its own
                                                                         // would be buffered
    ASSERT_TRUE(other.waitForReadyRead(kPatienceMs));
    const coilbook::testing::Heartbeat heart;
    type("129.5");
    ASSERT_TRUE(waitFor([&] { return says(BenchMessage::Kind::Waiting); }));
    EXPECT_TRUE(tells("Another program is writing to the logbook"));
    type("129");
    QTest::qWait(1500); // it is tried again meanwhile
    EXPECT_LT(heart.longestFreeze(), 200) << "milliseconds";
    other.closeWriteChannel();
    ASSERT_TRUE(other.waitForFinished(kPatienceMs));
    EXPECT_TRUE(tells("is saved in the logbook now: 2 readings."));
    EXPECT_EQ(storedReadings(), 3U);
}

TEST_F(LogbookStateTest, WithoutAPlaceToWaitWhatIsTypedStaysOnTheScreen) {
    session.keepWaiting(QStringLiteral("/proc/no such place/waiting.sqlite"));
    startRound();
    session.closeLogbook(); // a session that never had a place to wait
    ASSERT_TRUE(waitFor([&] { return !session.isOpen(); }));
    LogbookSession bare(clock);
    window = std::make_unique<MainWindow>(bare, preferences);
    window->show();
    window->openLogbook(logbook());
    ASSERT_TRUE(waitFor([&] { return page() != nullptr && page()->showsRound(); }));
    heedCautions();
    ASSERT_TRUE(QFile::rename(logbook(), away()));
    type("129.5");
    ASSERT_TRUE(waitFor([&] { return says(BenchMessage::Kind::NotSaved); }));
    EXPECT_TRUE(tells("was moved, deleted or replaced"));
    EXPECT_EQ(page()->round().panel().field().text(), QStringLiteral("129.5"));
    window.reset();
}

TEST_F(LogbookStateTest, WaitingReadingsAreOfferedWhenTheirLogbookIsNotThereAfterARestart) {
    startRound();
    ASSERT_TRUE(QFile::rename(logbook(), away()));
    type("129.5");
    ASSERT_TRUE(waitFor([&] { return says(BenchMessage::Kind::Waiting); }));
    window.reset();
    session.closeLogbook();
    ASSERT_TRUE(waitFor([&] { return !session.isOpen(); }));
    LogbookSession again(clock);
    again.keepWaiting(spool());
    window = std::make_unique<MainWindow>(again, preferences);
    window->show();
    window->openLogbook(logbook());
    EXPECT_TRUE(tells("Waiting for it on this computer: 1 reading"));
    ASSERT_NE(wayOut("Save what is waiting elsewhere…"), nullptr);
    const QString csv = file(QStringLiteral("waiting.csv"));
    window->findChild<LogbookState*>()->saveWaiting(logbook(), csv);
    EXPECT_TRUE(tells("The readings that wait are written to"));
    QFile written(csv);
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    EXPECT_TRUE(written.readAll().contains(",129.5,"));
    ASSERT_TRUE(QFile::rename(away(), logbook()));
    window->openLogbook(logbook());
    ASSERT_TRUE(waitFor([&] { return again.isOpen(); }));
    EXPECT_TRUE(waitFor([&] { return storedReadings() == 2; }));
    window.reset();
}

TEST_F(LogbookStateTest, TheSecondWindowSaysWhoHasItFollowsAndTakesOver) {
    makeLogbook();
    engine = addEngine(QStringLiteral("Blue"));
    LogbookSession second(clock);
    window = std::make_unique<MainWindow>(second, preferences);
    window->show();
    window->openLogbook(logbook());
    EXPECT_TRUE(tells("is being worked on elsewhere (coilbook_ui_tests on "));
    EXPECT_TRUE(
        tells(qPrintable(QStringLiteral("process %1").arg(QCoreApplication::applicationPid()))));
    EXPECT_EQ(window->statusText(),
              QStringLiteral("Read only: season.coilbook is being worked on elsewhere."));
    ASSERT_TRUE(waitFor([&] { return page() != nullptr; }));
    EXPECT_TRUE(waitFor(
        [&] { return page()->emptyText().contains(QStringLiteral("worked on elsewhere")); }));
    put(startOf(engine.id, {QDate::currentDate(), 0, {}, {}, {}}, true));
    EXPECT_TRUE(waitFor([&] { return second.log() && second.log()->inspections.size() == 1; }));
    EXPECT_EQ(wayOut("Work on it here"), nullptr);
    session.closeLogbook();
    EXPECT_TRUE(tells("It can be worked on here now."));
    QPushButton* take = wayOut("Work on it here");
    ASSERT_NE(take, nullptr);
    take->click();
    EXPECT_TRUE(waitFor([&] { return second.isOpen() && !second.isReadOnly(); }));
    EXPECT_TRUE(waitFor([&] { return page()->showsRound(); }));
    window.reset();
}

TEST_F(LogbookStateTest, AWriteProtectedLogbookIsShownAndTriedAgain) {
    if (::geteuid() == 0) {
        GTEST_SKIP() << "permissions mean nothing to root";
    }
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    session.closeLogbook();
    ASSERT_TRUE(waitFor([&] { return !session.isOpen(); }));
    ASSERT_TRUE(QFile::setPermissions(logbook(), QFile::ReadOwner));
    showWindow();
    window->openLogbook(logbook());
    EXPECT_TRUE(tells("is write-protected, so it can only be read"));
    ASSERT_TRUE(QFile::setPermissions(logbook(), QFile::ReadOwner | QFile::WriteOwner));
    QPushButton* again = wayOut("Try again");
    ASSERT_NE(again, nullptr);
    again->click();
    EXPECT_TRUE(waitFor([&] { return session.isOpen() && !session.isReadOnly(); }));
}

TEST_F(LogbookStateTest, EachFileThatCannotBeOpenedGetsItsSentence) {
    makeLogbook();
    session.closeLogbook();
    ASSERT_TRUE(waitFor([&] { return !session.isOpen(); }));
    showWindow();
    const auto refused = [&](const QString& path, const char* part) {
        window->openLogbook(path);
        EXPECT_TRUE(tells(part));
        EXPECT_NE(wayOut("Try again"), nullptr);
        window->strip().dismiss();
    };
    refused(file(QStringLiteral("none.coilbook")), "There is no such file");
    QFile empty(file(QStringLiteral("empty.coilbook")));
    ASSERT_TRUE(empty.open(QIODevice::WriteOnly));
    refused(empty.fileName(), "not a Coilbook logbook");
    const QString newer = file(QStringLiteral("newer.coilbook"));
    ASSERT_TRUE(QFile::copy(logbook(), newer));
    ASSERT_EQ(QProcess::execute(QStringLiteral("sqlite3"),
                                {newer, QStringLiteral("PRAGMA user_version=99")}),
              0);
    refused(newer, "written by a newer Coilbook");
    if (::geteuid() != 0) {
        ASSERT_TRUE(QFile::setPermissions(newer, QFile::Permissions()));
        refused(newer, "no permission");
    }
    QProcess other;
    other.start(QStringLiteral("sqlite3"), {logbook()});
    other.write("BEGIN EXCLUSIVE; SELECT 'held';\n");
    ASSERT_TRUE(other.waitForReadyRead(kPatienceMs));
    refused(logbook(), "Another program is writing to this logbook");
    other.closeWriteChannel();
    other.waitForFinished();
}

} // namespace
