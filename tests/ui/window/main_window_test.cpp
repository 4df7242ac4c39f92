#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/look/theme.h"
#include "ui/main_window.h"
#include "ui/pages/start_page.h"
#include "ui/widgets/engine_selector.h"
#include "ui/widgets/message_strip.h"
#include "ui/window/logbook_files.h"
#include "ui/window/top_bar.h"

#include <QAction>
#include <QApplication>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFile>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QUrl>

using namespace coilbook;

namespace {

class MainWindowTest : public coilbook::testing::LogbookFixture {
protected:
    MainWindowTest() {
        preferences.setColourScheme(ColourScheme::Light);
        settings.sync();
    }

    ~MainWindowTest() override { QApplication::setPalette(QPalette()); }

    /// A window whose pages are plain widgets named after their place.
    std::unique_ptr<MainWindow> makeWindow() {
        auto window = std::make_unique<MainWindow>(
            session, preferences,
            [this](WorkPlace place, LogbookSession&, Preferences&, QWidget* parent) {
                made.push_back(place);
                return new QWidget(parent);
            });
        window->show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
        return window;
    }

    static bool isOnStartPage(const MainWindow& window) {
        return qobject_cast<StartPage*>(window.page()) != nullptr;
    }

    static QString headline(const MainWindow& window) {
        return window.findChild<StartPage*>()->headline();
    }

    static void drop(MainWindow& window, const QStringList& paths, bool isTaken = true) {
        QMimeData data;
        QList<QUrl> urls;
        for (const QString& path : paths) {
            urls << QUrl::fromLocalFile(path);
        }
        data.setUrls(urls);
        QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &data, Qt::LeftButton,
                              Qt::NoModifier);
        QApplication::sendEvent(&window, &enter);
        ASSERT_EQ(enter.isAccepted(), isTaken);
        QDropEvent event(QPointF(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&window, &event);
    }

    void write(const QString& name, const QByteArray& bytes) const {
        QFile out(file(name));
        ASSERT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(bytes);
    }

    std::vector<WorkPlace> made;
};

TEST_F(MainWindowTest, OffersThreeWaysToStartWithoutALogbook) {
    const auto window = makeWindow();
    EXPECT_TRUE(isOnStartPage(*window));
    for (const char* name : {"newLogbook", "demoLogbook", "openLogbook"}) {
        const auto* card = window->findChild<QAbstractButton*>(QString::fromLatin1(name));
        ASSERT_NE(card, nullptr) << name;
        EXPECT_TRUE(card->isVisible()) << name;
    }
    EXPECT_TRUE(made.empty());
    QTest::keyClick(window.get(), Qt::Key_F3);
    EXPECT_TRUE(isOnStartPage(*window));
}

TEST_F(MainWindowTest, AsksForAFirstEngineInAnEmptyLogbook) {
    const auto window = makeWindow();
    makeLogbook();
    EXPECT_TRUE(isOnStartPage(*window));
    EXPECT_EQ(headline(*window), QStringLiteral("Set up your first engine"));
    EXPECT_NE(window->findChild<QAbstractButton*>(QStringLiteral("newEngine")), nullptr);
}

TEST_F(MainWindowTest, GoesToEachPlaceByItsKeyAndMakesItsPageOnlyThen) {
    const auto window = makeWindow();
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    EXPECT_EQ(made, std::vector<WorkPlace>({WorkPlace::Bench}));
    QTest::keyClick(window.get(), Qt::Key_F4);
    EXPECT_EQ(window->place(), WorkPlace::Sheet);
    QTest::keyClick(window.get(), Qt::Key_F3);
    EXPECT_EQ(window->place(), WorkPlace::Review);
    QTest::keyClick(window.get(), Qt::Key_F2);
    EXPECT_EQ(window->place(), WorkPlace::Bench);
    QTest::keyClick(window.get(), Qt::Key_F4);
    EXPECT_EQ(made,
              std::vector<WorkPlace>({WorkPlace::Bench, WorkPlace::Sheet, WorkPlace::Review}));
}

TEST_F(MainWindowTest, SaysWhichEngineAfterHowManyRacesAndWhereItIsSaved) {
    const auto window = makeWindow();
    makeLogbook();
    const Engine engine = addEngine(QStringLiteral("Blue"));
    const auto* top = window->findChild<TopBar*>();
    EXPECT_EQ(top->selector().currentText(), QStringLiteral("Blue"));
    EXPECT_EQ(top->standText(), QStringLiteral("after 0 races, nothing entered yet"));
    Race race;
    race.id = RaceId::make();
    race.engine = engine.id;
    race.number = 1;
    race.racedOn = QDate(2026, 3, 7);
    put(AddRace{race});
    ASSERT_TRUE(waitFor([&] { return session.log()->races.size() == 1; }));
    EXPECT_EQ(top->standText(), QStringLiteral("after 1 race, newest entry 2026-03-07"));
    EXPECT_EQ(window->windowTitle(), QStringLiteral("Blue – season – Coilbook"));
    EXPECT_EQ(window->statusText(), QStringLiteral("All entries are saved in season.coilbook."));
}

TEST_F(MainWindowTest, FindsAnEngineByCtrlEAndAPartOfItsName) {
    const auto window = makeWindow();
    makeLogbook();
    const Engine blue = addEngine(QStringLiteral("Blue"));
    addEngine(QStringLiteral("Red spare"));
    QTest::keyClick(window.get(), Qt::Key_E, Qt::ControlModifier);
    auto& selector = window->findChild<TopBar*>()->selector();
    ASSERT_TRUE(selector.lineEdit()->hasFocus());
    selector.lineEdit()->setText(QStringLiteral("lue"));
    QTest::keyClick(selector.lineEdit(), Qt::Key_Return);
    EXPECT_TRUE(waitFor([&] { return session.log()->engine.id == blue.id; }));
    EXPECT_EQ(preferences.lastEngine(), blue.id.text());
    EXPECT_FALSE(selector.lineEdit()->hasFocus());
}

TEST_F(MainWindowTest, UndoesAndRedoesByTheUsualKeysAndSaysWhat) {
    const auto window = makeWindow();
    makeLogbook();
    Engine engine = addEngine(QStringLiteral("Blue"));
    engine.serial = QStringLiteral("S-7");
    put(AmendEngine{engine, {QStringLiteral("Sam"), clock.now(), QStringLiteral("forgotten")}});
    ASSERT_TRUE(waitFor([&] { return session.log()->engine.serial == QStringLiteral("S-7"); }));
    const auto* undo = window->findChild<QAction*>(QStringLiteral("undo"));
    ASSERT_TRUE(undo->isEnabled());
    EXPECT_EQ(undo->text(), QStringLiteral("&Undo: %1").arg(session.undoText()));
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(waitFor([&] { return session.log()->engine.serial.isEmpty(); }));
    QTest::keySequence(window.get(), QKeySequence(QKeySequence::Redo));
    EXPECT_TRUE(waitFor([&] { return session.log()->engine.serial == QStringLiteral("S-7"); }));
}

TEST_F(MainWindowTest, ExplainsAFileThatIsNoLogbookAndOffersAWayOut) {
    write(QStringLiteral("notes.coilbook"), "not a logbook, just some words\n");
    const auto window = makeWindow();
    window->openLogbook(file(QStringLiteral("notes.coilbook")));
    ASSERT_TRUE(waitFor([&] { return !window->strip().sentence().isEmpty(); }));
    EXPECT_TRUE(window->strip().sentence().contains(QStringLiteral("not a Coilbook logbook")))
        << window->strip().sentence().toStdString();
    EXPECT_EQ(headline(*window), QStringLiteral("This logbook could not be opened"));
    QStringList waysOut;
    const QList<QPushButton*> buttons = window->strip().findChildren<QPushButton*>();
    for (const QPushButton* button : buttons) {
        waysOut << button->text();
    }
    EXPECT_TRUE(waysOut.contains(QStringLiteral("Try again")));
    EXPECT_TRUE(waysOut.contains(QStringLiteral("Choose another file…")));
}

TEST_F(MainWindowTest, OpensALogbookThatIsDropped) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    session.closeLogbook();
    ASSERT_TRUE(waitFor([&] { return !session.isOpen(); }));
    const auto window = makeWindow();
    drop(*window, {file(QStringLiteral("season.coilbook"))});
    EXPECT_TRUE(waitFor([&] { return session.isOpen() && session.log(); }));
    EXPECT_EQ(preferences.recentLogbooks(), QStringList(session.path()));
    EXPECT_EQ(preferences.lastLogbook(), session.path());
}

TEST_F(MainWindowTest, ImportsTablesThatAreDropped) {
    write(QStringLiteral("readings.csv"),
          "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf\n"
          "Blue,2026-03-01,0,1,I,S-1,121.5\n");
    const auto window = makeWindow();
    makeLogbook();
    drop(*window, {file(QStringLiteral("readings.csv"))});
    ASSERT_TRUE(waitFor([&] { return session.log() != nullptr; }));
    EXPECT_EQ(session.log()->engine.name, QStringLiteral("Blue"));
    EXPECT_FALSE(isOnStartPage(*window));
}

TEST_F(MainWindowTest, ExportsWhatAnImportTakesBack) {
    const auto window = makeWindow();
    makeLogbook();
    const Engine engine = addEngine(QStringLiteral("Blue"));
    Race race;
    race.id = RaceId::make();
    race.engine = engine.id;
    race.racedOn = QDate(2026, 3, 7);
    put(AddRace{race});
    window->findChild<LogbookFiles*>()->exportTo(file(QStringLiteral("out")));
    ASSERT_TRUE(waitFor([&] { return !window->strip().sentence().isEmpty(); }));
    EXPECT_TRUE(window->strip().sentence().startsWith(QStringLiteral("Wrote races.csv")));
    for (const char* name : {"races.csv", "readings.csv", "logbook.json"}) {
        EXPECT_TRUE(QFile::exists(file(QStringLiteral("out/") + QString::fromLatin1(name))));
    }
    drop(*window, {file(QStringLiteral("out/races.csv"))});
    ASSERT_TRUE(waitFor([&] { return !window->strip().sentence().isEmpty(); }));
    EXPECT_EQ(session.log()->races.size(), 1U);
}

TEST_F(MainWindowTest, SaysWhereAFaultyTableIsWrongAndKeepsTheLogbook) {
    write(QStringLiteral("readings.csv"),
          "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf\n"
          "Blue,2026-03-01,0,9,I,S-1,121.5\n");
    const auto window = makeWindow();
    makeLogbook();
    drop(*window, {file(QStringLiteral("readings.csv"))});
    ASSERT_TRUE(waitFor([&] { return !window->strip().sentence().isEmpty(); }));
    EXPECT_TRUE(window->strip().sentence().contains(QStringLiteral("cylinder")))
        << window->strip().sentence().toStdString();
    EXPECT_TRUE(session.engines().empty());
}

TEST_F(MainWindowTest, BacksUpAndRefusesToOverwrite) {
    const auto window = makeWindow();
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    auto* files = window->findChild<LogbookFiles*>();
    const QString copy = file(QStringLiteral("copy.coilbook"));
    files->backUp(copy);
    ASSERT_TRUE(waitFor([&] { return !window->strip().sentence().isEmpty(); }));
    EXPECT_TRUE(window->strip().sentence().startsWith(QStringLiteral("Backed up to ")));
    EXPECT_TRUE(QFile::exists(copy));
    files->backUp(copy);
    ASSERT_TRUE(waitFor([&] { return !window->strip().sentence().isEmpty(); }));
    EXPECT_TRUE(window->strip().sentence().contains(QStringLiteral("is there already")))
        << window->strip().sentence().toStdString();
}

TEST_F(MainWindowTest, DoesNothingWithOtherFilesAndSaysSo) {
    const auto window = makeWindow();
    makeLogbook();
    drop(*window, {file(QStringLiteral("a.csv")), file(QStringLiteral("photo.png"))});
    EXPECT_TRUE(window->strip().sentence().startsWith(QStringLiteral("Drop either")));
    EXPECT_TRUE(session.engines().empty());
}

TEST_F(MainWindowTest, AsksForALogbookBeforeTablesAreDropped) {
    const auto window = makeWindow();
    drop(*window, {file(QStringLiteral("a.csv"))});
    EXPECT_TRUE(window->strip().sentence().startsWith(QStringLiteral("Open the logbook first")));
}

TEST_F(MainWindowTest, KeepsItsSizeForTheNextStart) {
    {
        const auto window = makeWindow();
        window->resize(900, 640);
        window->close();
    }
    EXPECT_EQ(makeWindow()->size(), QSize(900, 640));
}

TEST_F(MainWindowTest, NeedsNoMoreThanASmallLaptopAtTheLargestText) {
    preferences.setTextPercent(150);
    const QFont before = QApplication::font();
    {
        const Theme theme(*qApp, preferences);
        const auto window = makeWindow();
        window->resize(1366, 768);
        const auto* scroll = window->findChild<QScrollArea*>();
        EXPECT_EQ(scroll->verticalScrollBar()->maximum(), 0);
        EXPECT_EQ(scroll->horizontalScrollBar()->maximum(), 0);
        makeLogbook();
        QTest::qWait(0);
        EXPECT_EQ(scroll->verticalScrollBar()->maximum(), 0);
        addEngine(QStringLiteral("A rather long name of an engine, spare block of the second car"));
        const QSize full = window->minimumSizeHint();
        EXPECT_LE(full.width(), 1366);
        EXPECT_LE(full.height(), 768);
    }
    QApplication::setFont(before);
}

} // namespace
