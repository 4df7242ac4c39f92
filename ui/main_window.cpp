#include "ui/main_window.h"

#include "core/services/logbook_session.h"
#include "ui/dialogs/engine_dialog.h"
#include "ui/dialogs/reason_dialog.h"
#include "ui/dialogs/records_dialog.h"
#include "ui/dialogs/testers_dialog.h"
#include "ui/dialogs/text_dialog.h"
#include "ui/dialogs/verify_dialog.h"
#include "ui/look/plain_labels.h"
#include "ui/pages/review_page.h"
#include "ui/pages/sheet_page.h"
#include "ui/pages/start_page.h"
#include "ui/preferences.h"
#include "ui/widgets/engine_selector.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/work_strip.h"
#include "ui/window/logbook_files.h"
#include "ui/window/logbook_state.h"
#include "ui/window/top_bar.h"
#include "ui/window/window_menus.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileInfo>
#include <QLabel>
#include <QMimeData>
#include <QScreen>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace coilbook {

MainWindow::MainWindow(LogbookSession& session, Preferences& preferences, PageMaker maker)
    : m_session(session)
    , m_preferences(preferences)
    , m_makePage(std::move(maker))
    , m_top(new TopBar(session, this))
    , m_strip(new MessageStrip(this))
    , m_work(new WorkStrip(this))
    , m_stack(new QStackedWidget(this))
    , m_start(new StartPage(this))
    , m_status(new QLabel(this))
    , m_menus(new WindowMenus(*this, session, preferences))
    , m_state(new LogbookState(*this, session, *m_strip))
    , m_files(new LogbookFiles(*this, session, preferences, *m_strip, *m_state)) {
    new PlainLabels(this);
    auto* body = new QWidget(this);
    auto* column = new QVBoxLayout(body);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_top);
    column->addWidget(m_strip);
    column->addWidget(m_work);
    column->addWidget(m_stack, 1);
    setCentralWidget(body);
    m_stack->addWidget(m_start);
    m_status->setTextFormat(Qt::PlainText);
    statusBar()->addWidget(m_status, 1);
    setAcceptDrops(true);
    wireMenus();
    wireSession();
    wireStartPage();
    const auto tellPerson = [this] {
        m_session.setPerson(m_preferences.personName());
    };
    connect(&m_preferences, &Preferences::changed, this, tellPerson);
    tellPerson();
    restorePlaceOnScreen();
    m_top->setPlace(m_place);
    m_menus->setPlace(m_place);
    showFitting();
}

MainWindow::~MainWindow() = default;

void MainWindow::wireMenus() {
    WindowMenus* menus = m_menus;
    LogbookFiles* files = m_files;
    connect(menus, &WindowMenus::newLogbookWanted, files, &LogbookFiles::createNew);
    connect(menus, &WindowMenus::openWanted, files, &LogbookFiles::openOther);
    connect(menus, &WindowMenus::demoWanted, files, &LogbookFiles::openDemo);
    connect(menus, &WindowMenus::recentWanted, files, &LogbookFiles::open);
    connect(menus, &WindowMenus::importWanted, files, &LogbookFiles::chooseImport);
    connect(menus, &WindowMenus::exportWanted, files, &LogbookFiles::chooseExport);
    connect(menus, &WindowMenus::backupWanted, files, &LogbookFiles::chooseBackup);
    connect(menus, &WindowMenus::secondBackupPlaceWanted, files, &LogbookFiles::chooseSecondPlace);
    connect(menus, &WindowMenus::verifyWanted, this,
            [this] { (new VerifyDialog(m_session, this))->open(); });
    connect(menus, &WindowMenus::closeWanted, &m_session, &LogbookSession::closeLogbook);
    connect(menus, &WindowMenus::chooseEngineWanted, this, &MainWindow::chooseEngine);
    connect(menus, &WindowMenus::newEngineWanted, this, [this] { editEngine(true); });
    connect(menus, &WindowMenus::settingsWanted, this, [this] { editEngine(false); });
    connect(menus, &WindowMenus::retireWanted, this, &MainWindow::retireEngine);
    connect(menus, &WindowMenus::placeWanted, this, &MainWindow::showPlace);
    const auto records = [this](RecordsDialog::Page page) {
        return [this, page] {
            (new RecordsDialog(m_session, m_preferences, page, this))->open();
        };
    };
    connect(menus, &WindowMenus::racesWanted, this, records(RecordsDialog::Page::Races));
    connect(menus, &WindowMenus::testersWanted, this, [this] {
        (new TestersDialog(m_session, m_preferences, TestersDialog::Page::Testers, this))->open();
    });
    connect(menus, &WindowMenus::recordsWanted, this, records(RecordsDialog::Page::Inspections));
    connect(menus, &WindowMenus::changesWanted, this, records(RecordsDialog::Page::Changes));
    connect(menus, &WindowMenus::cautionsWanted, this,
            [this] { makeCautionsDialog(this)->open(); });
    connect(menus, &WindowMenus::aboutWanted, this,
            [this] { makeAboutDialog(m_session.path(), this)->open(); });
}

void MainWindow::wireSession() {
    connect(&m_session, &LogbookSession::opened, this, [this] { m_opening = false; });
    connect(&m_session, &LogbookSession::closed, this, &MainWindow::showFitting);
    connect(&m_session, &LogbookSession::enginesChanged, this, &MainWindow::onEngines);
    connect(&m_session, &LogbookSession::logChanged, this, [this] {
        showTitle();
        showStatus();
    });
    connect(&m_session, &LogbookSession::waitingChanged, this, &MainWindow::showStatus);
    connect(&m_session, &LogbookSession::importProgress, m_work, &WorkStrip::setPart);
    connect(&m_session, &LogbookSession::importFinished, this, &MainWindow::endImport);
    connect(&m_session, &LogbookSession::importFailed, this, &MainWindow::endImport);
    connect(m_work, &WorkStrip::cancelled, &m_session, &LogbookSession::cancelImport);
    connect(m_files, &LogbookFiles::importStarted, this, [this](int files) {
        m_work->start(files == 1 ? tr("Importing 1 file")
                                 : tr("Importing %n files", nullptr, files));
        m_menus->setImporting(true);
    });
    connect(m_files, &LogbookFiles::opening, this, [this](const QString& path) {
        m_opening = true;
        if (!m_session.isOpen()) {
            m_start->showOpening(QFileInfo(path).fileName());
        }
    });
    connect(m_files, &LogbookFiles::openRefused, this, [this](const QString& sentence) {
        m_opening = false;
        if (!m_session.isOpen()) {
            m_start->showNoLogbook(sentence);
        }
    });
    connect(m_top, &TopBar::placeChosen, this, &MainWindow::showPlace);
    connect(&m_top->selector(), &EngineSelector::engineChosen, this, &MainWindow::selectEngine);
    connect(&m_top->selector(), &EngineSelector::left, this, [this] {
        QWidget* before = m_focusBefore.data();
        if (before != nullptr && before->isVisible()) {
            before->setFocus();
        } else {
            m_stack->setFocus();
        }
    });
}

void MainWindow::wireStartPage() {
    connect(m_start, &StartPage::newLogbookWanted, m_files, &LogbookFiles::createNew);
    connect(m_start, &StartPage::demoWanted, m_files, &LogbookFiles::openDemo);
    connect(m_start, &StartPage::openWanted, m_files, &LogbookFiles::openOther);
    connect(m_start, &StartPage::importWanted, m_files, &LogbookFiles::chooseImport);
    connect(m_start, &StartPage::engineWanted, this, [this] { editEngine(true); });
}

void MainWindow::restorePlaceOnScreen() {
    if (restoreGeometry(m_preferences.windowGeometry())) {
        return;
    }
    const QRect screen = this->screen()->availableGeometry();
    resize(screen.size() * 0.9);
    move(screen.center() - rect().center());
}

void MainWindow::openLogbook(const QString& path) {
    m_files->open(path);
}

void MainWindow::onEngines() {
    const std::vector<EngineSummary>& engines = m_session.engines();
    if (m_session.selectedEngine().isNull() && !engines.empty()) {
        const EngineId last = EngineId::fromText(m_preferences.lastEngine());
        auto chosen = std::find_if(engines.begin(), engines.end(),
                                   [&](const EngineSummary& engine) { return engine.id == last; });
        if (chosen == engines.end()) {
            chosen = std::find_if(engines.begin(), engines.end(),
                                  [](const EngineSummary& engine) { return !engine.retired; });
        }
        selectEngine(chosen == engines.end() ? engines.front().id : chosen->id);
    }
    showFitting();
}

void MainWindow::selectEngine(const EngineId& engine) {
    m_preferences.setLastEngine(engine.text());
    m_session.selectEngine(engine);
}

void MainWindow::chooseEngine() {
    m_focusBefore = QApplication::focusWidget();
    m_top->selector().startTyping();
}

QWidget* MainWindow::page() const {
    return m_stack->currentWidget();
}

void MainWindow::showPlace(WorkPlace place) {
    m_place = place;
    showFitting();
}

void MainWindow::showFitting() {
    const bool hasEngine = m_session.isOpen() && !m_session.engines().empty();
    m_top->setPlacesEnabled(hasEngine);
    m_top->setPlace(m_place);
    m_menus->setPlace(m_place);
    showTitle();
    showStatus();
    if (!hasEngine) {
        if (m_session.isOpen()) {
            m_start->showNoEngine(m_session.isReadOnly());
        } else if (!m_opening) {
            m_start->showNoLogbook();
        }
        m_stack->setCurrentWidget(m_start);
        return;
    }
    QWidget*& page = m_pages.at(static_cast<std::size_t>(m_place));
    if (page == nullptr) {
        page = m_makePage(m_place, m_session, m_preferences, m_stack);
        m_stack->addWidget(page);
        if (const auto* review = qobject_cast<ReviewPage*>(page)) {
            connect(review, &ReviewPage::benchWanted, this,
                    [this] { showPlace(WorkPlace::Bench); });
            connect(review, &ReviewPage::printPlanWanted, this, [this] {
                showPlace(WorkPlace::Sheet);
                if (auto* sheet = qobject_cast<SheetPage*>(this->page())) {
                    sheet->choose(SheetPage::Document::Plan);
                }
            });
        }
    }
    m_stack->setCurrentWidget(page);
}

void MainWindow::showTitle() {
    if (!m_session.isOpen()) {
        setWindowTitle(tr("Coilbook"));
        return;
    }
    const QString logbook = QFileInfo(m_session.path()).completeBaseName();
    const auto log = m_session.log();
    setWindowTitle(log ? tr("%1 – %2 – Coilbook").arg(log->engine.name, logbook)
                       : tr("%1 – Coilbook").arg(logbook));
}

void MainWindow::showStatus() {
    if (!m_session.isOpen()) {
        m_status->clear();
        m_status->setToolTip({});
        return;
    }
    m_status->setText(m_state->statusText());
    m_status->setToolTip(m_session.path());
}

QString MainWindow::statusText() const {
    return m_status->text();
}

void MainWindow::editEngine(bool isNew) {
    const auto log = m_session.log();
    if (!isNew && !log) {
        return;
    }
    auto* dialog = new EngineDialog(m_session, m_preferences,
                                    isNew ? std::nullopt : std::optional(log->engine), this);
    connect(dialog, &EngineDialog::saved, this, [this, isNew](const EngineId& engine) {
        if (isNew) {
            selectEngine(engine);
        }
    });
    dialog->open();
}

void MainWindow::retireEngine() {
    const auto log = m_session.log();
    if (!log) {
        return;
    }
    Engine engine = log->engine;
    engine.retired = !engine.retired;
    const QString advice =
        engine.retired
            ? tr("“%1” goes to the end of the list and stays readable with all its data.")
                  .arg(engine.name)
            : tr("“%1” goes back among the engines in service.").arg(engine.name);
    auto* dialog = new ReasonDialog(
        m_session, m_preferences,
        engine.retired ? tr("Retire the engine") : tr("Back into service"), advice,
        engine.retired ? tr("Retire") : tr("Put back"),
        [engine](const Authorship& author) {
            return Change(AmendEngine{engine, author});
        },
        this);
    dialog->open();
}

void MainWindow::endImport() {
    m_work->finish();
    m_menus->setImporting(false);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (LogbookFiles::canTake(*event->mimeData())) {
        event->acceptProposedAction();
    }
}

void MainWindow::dropEvent(QDropEvent* event) {
    event->acceptProposedAction();
    m_files->take(LogbookFiles::pathsIn(*event->mimeData()));
}

void MainWindow::closeEvent(QCloseEvent* event) {
    m_preferences.setWindowGeometry(saveGeometry());
    QMainWindow::closeEvent(event);
}

} // namespace coilbook
