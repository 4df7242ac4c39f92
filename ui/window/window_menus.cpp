#include "ui/window/window_menus.h"

#include "core/services/logbook_session.h"
#include "ui/look/icons.h"

#include <QAction>
#include <QActionGroup>
#include <QFileInfo>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>

#include <algorithm>

namespace coilbook {

WindowMenus::WindowMenus(QMainWindow& window, LogbookSession& session, Preferences& preferences)
    : QObject(&window)
    , m_window(window)
    , m_session(session)
    , m_preferences(preferences) {
    buildLogbookMenu();
    buildEngineMenu();
    buildEditMenu();
    buildViewMenu();
    buildHelpMenu();
    connect(&session, &LogbookSession::opened, this, &WindowMenus::refresh);
    connect(&session, &LogbookSession::closed, this, &WindowMenus::refresh);
    connect(&session, &LogbookSession::enginesChanged, this, &WindowMenus::refresh);
    connect(&session, &LogbookSession::logChanged, this, &WindowMenus::refresh);
    connect(&session, &LogbookSession::undoChanged, this, &WindowMenus::refreshUndo);
    refresh();
}

void WindowMenus::buildLogbookMenu() {
    QMenu* menu = m_window.menuBar()->addMenu(tr("&Logbook"));
    menu->addAction(icon(Picture::New), tr("&New…"), QKeySequence(QKeySequence::New), this,
                    &WindowMenus::newLogbookWanted);
    menu->addAction(icon(Picture::Open), tr("&Open…"), QKeySequence(QKeySequence::Open), this,
                    &WindowMenus::openWanted);
    m_recent = menu->addMenu(tr("Open &recent"));
    connect(m_recent, &QMenu::aboutToShow, this, &WindowMenus::fillRecent);
    menu->addAction(icon(Picture::Demo), tr("Open the &demo logbook"), this,
                    &WindowMenus::demoWanted);
    menu->addSeparator();
    m_import =
        menu->addAction(icon(Picture::Import), tr("&Import files…"),
                        QKeySequence(QStringLiteral("Ctrl+I")), this, &WindowMenus::importWanted);
    m_needWriting << m_import;
    m_needLogbook << m_import;
    m_needLogbook << menu->addAction(icon(Picture::Export), tr("&Export to a folder…"), this,
                                     &WindowMenus::exportWanted);
    m_needLogbook << menu->addAction(icon(Picture::Backup), tr("&Back up…"),
                                     QKeySequence(QStringLiteral("Ctrl+B")), this,
                                     &WindowMenus::backupWanted);
    menu->addAction(tr("&Second place for backups…"), this, &WindowMenus::secondBackupPlaceWanted);
    m_needLogbook << menu->addAction(tr("&Verify…"), this, &WindowMenus::verifyWanted);
    menu->addSeparator();
    m_needLogbook << menu->addAction(icon(Picture::Close), tr("&Close"),
                                     QKeySequence(QKeySequence::Close), this,
                                     &WindowMenus::closeWanted);
    menu->addAction(tr("&Quit"), QKeySequence(QKeySequence::Quit), &m_window, &QWidget::close);
}

void WindowMenus::buildEngineMenu() {
    QMenu* menu = m_window.menuBar()->addMenu(tr("&Engine"));
    m_needEngine << menu->addAction(icon(Picture::Engine), tr("&Choose…"),
                                    QKeySequence(QStringLiteral("Ctrl+E")), this,
                                    &WindowMenus::chooseEngineWanted);
    QAction* fresh = menu->addAction(icon(Picture::Add), tr("&New engine…"),
                                     QKeySequence(QStringLiteral("Ctrl+Shift+N")), this,
                                     &WindowMenus::newEngineWanted);
    m_needLogbook << fresh;
    m_needWriting << fresh;
    m_needEngine << menu->addAction(icon(Picture::Settings), tr("&Settings…"),
                                    QKeySequence(QStringLiteral("Ctrl+,")), this,
                                    &WindowMenus::settingsWanted);
    menu->addSeparator();
    m_needEngine << menu->addAction(icon(Picture::Race), tr("&Races…"),
                                    QKeySequence(QStringLiteral("Ctrl+R")), this,
                                    &WindowMenus::racesWanted);
    m_needEngine << menu->addAction(icon(Picture::Records), tr("&Inspections and springs…"), this,
                                    &WindowMenus::recordsWanted);
    m_needEngine << menu->addAction(icon(Picture::Amend), tr("&All changes made afterwards…"), this,
                                    &WindowMenus::changesWanted);
    m_needLogbook << menu->addAction(icon(Picture::Tester), tr("&Testers…"),
                                     QKeySequence(QStringLiteral("Ctrl+T")), this,
                                     &WindowMenus::testersWanted);
    menu->addSeparator();
    m_retire = menu->addAction(icon(Picture::Retired), {}, this, &WindowMenus::retireWanted);
    m_needEngine << m_retire;
    m_needWriting << m_retire;
}

void WindowMenus::buildEditMenu() {
    QMenu* menu = m_window.menuBar()->addMenu(tr("E&dit"));
    m_undo = menu->addAction(icon(Picture::Undo), {}, QKeySequence(QKeySequence::Undo), &m_session,
                             &LogbookSession::undo);
    m_redo = menu->addAction(icon(Picture::Redo), {}, QKeySequence(QKeySequence::Redo), &m_session,
                             &LogbookSession::redo);
    m_undo->setObjectName(QStringLiteral("undo"));
    m_redo->setObjectName(QStringLiteral("redo"));
}

template <class Value>
void WindowMenus::addChoices(QMenu* menu, const QList<std::pair<QString, Value>>& choices,
                             Value now, void (Preferences::*set)(Value)) {
    auto* group = new QActionGroup(menu);
    for (const auto& [text, value] : choices) {
        QAction* action = menu->addAction(text);
        action->setCheckable(true);
        action->setChecked(value == now);
        group->addAction(action);
        connect(action, &QAction::triggered, &m_preferences,
                [this, set, value = value] { (m_preferences.*set)(value); });
    }
}

void WindowMenus::buildViewMenu() {
    QMenu* menu = m_window.menuBar()->addMenu(tr("&View"));
    auto* group = new QActionGroup(menu);
    const auto addPlace = [&](WorkPlace place, Picture picture, const QString& text, Qt::Key key) {
        QAction* action = menu->addAction(icon(picture), text, QKeySequence(key), this,
                                          [this, place] { Q_EMIT placeWanted(place); });
        action->setCheckable(true);
        group->addAction(action);
        m_needEngine << action;
        m_places.at(static_cast<std::size_t>(place)) = action;
    };
    addPlace(WorkPlace::Bench, Picture::Bench, tr("&Bench"), Qt::Key_F2);
    addPlace(WorkPlace::Review, Picture::Review, tr("&Review"), Qt::Key_F3);
    addPlace(WorkPlace::Sheet, Picture::Sheet, tr("&Sheet"), Qt::Key_F4);
    menu->addSeparator();
    addChoices<ColourScheme>(menu->addMenu(tr("&Colours")),
                             {{tr("As the &system"), ColourScheme::System},
                              {tr("&Light"), ColourScheme::Light},
                              {tr("&Dark"), ColourScheme::Dark}},
                             m_preferences.colourScheme(), &Preferences::setColourScheme);
    addChoices<int>(menu->addMenu(tr("&Text size")),
                    {{tr("&100 %"), 100}, {tr("1&25 %"), 125}, {tr("1&50 %"), 150}},
                    m_preferences.textPercent(), &Preferences::setTextPercent);
    addChoices<ForceUnit>(
        menu->addMenu(tr("&Unit of force")),
        {{tr("&Pound-force (lbf)"), ForceUnit::PoundForce}, {tr("&Newton (N)"), ForceUnit::Newton}},
        m_preferences.forceUnit(), &Preferences::setForceUnit);
    QAction* sounds = menu->addAction(tr("Soun&ds at the bench"));
    sounds->setCheckable(true);
    sounds->setChecked(m_preferences.benchSounds());
    connect(sounds, &QAction::toggled, &m_preferences, &Preferences::setBenchSounds);
}

void WindowMenus::buildHelpMenu() {
    QMenu* menu = m_window.menuBar()->addMenu(tr("&Help"));
    menu->addAction(icon(Picture::Caution), tr("&Cautions"),
                    QKeySequence(QKeySequence::HelpContents), this, &WindowMenus::cautionsWanted);
    menu->addAction(icon(Picture::Coil), tr("&About Coilbook"), this, &WindowMenus::aboutWanted);
}

void WindowMenus::setPlace(WorkPlace place) {
    m_places.at(static_cast<std::size_t>(place))->setChecked(true);
}

void WindowMenus::setImporting(bool importing) {
    m_importing = importing;
    refresh();
}

void WindowMenus::fillRecent() {
    m_recent->clear();
    const QStringList paths = m_preferences.recentLogbooks();
    for (const QString& path : paths) {
        // An ampersand in a file's name is not a key.
        QString text = QFileInfo(path).fileName();
        text.replace(QLatin1Char('&'), QLatin1String("&&"));
        QAction* action =
            m_recent->addAction(text, this, [this, path] { Q_EMIT recentWanted(path); });
        action->setToolTip(path);
    }
    if (paths.isEmpty()) {
        m_recent->addAction(tr("None yet"))->setEnabled(false);
    }
    m_recent->setToolTipsVisible(true);
}

void WindowMenus::refresh() {
    const bool open = m_session.isOpen();
    const bool engine = open && !m_session.selectedEngine().isNull();
    const bool writable = open && !m_session.isReadOnly();
    for (QAction* action : m_needLogbook) {
        action->setEnabled(open && (writable || !m_needWriting.contains(action)));
    }
    for (QAction* action : m_needEngine) {
        action->setEnabled(engine && (writable || !m_needWriting.contains(action)));
    }
    m_import->setEnabled(m_import->isEnabled() && !m_importing);
    const auto log = m_session.log();
    m_retire->setText(log && log->engine.retired ? tr("&Put back into service…") : tr("Re&tire…"));
    refreshUndo();
}

void WindowMenus::refreshUndo() {
    const QString undo = m_session.undoText();
    const QString redo = m_session.redoText();
    m_undo->setText(undo.isEmpty() ? tr("&Undo") : tr("&Undo: %1").arg(undo));
    m_redo->setText(redo.isEmpty() ? tr("&Redo") : tr("&Redo: %1").arg(redo));
    m_undo->setEnabled(!undo.isEmpty());
    m_redo->setEnabled(!redo.isEmpty());
}

} // namespace coilbook
