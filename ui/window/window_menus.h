#pragma once

#include "ui/preferences.h"
#include "ui/window/work_place.h"

#include <QObject>

#include <array>

class QAction;
class QMainWindow;
class QMenu;

namespace coilbook {

class LogbookSession;

/// The menus of the window with their keys. Knows what can be done now and greys the rest; what is
/// to be done goes out as a signal.
class WindowMenus : public QObject {
    Q_OBJECT
public:
    /// Builds the menus into the menu bar of `window`, which owns this.
    WindowMenus(QMainWindow& window, LogbookSession& session, Preferences& preferences);

    void setPlace(WorkPlace place);
    void setImporting(bool importing);

Q_SIGNALS:
    void newLogbookWanted();
    void openWanted();
    void demoWanted();
    void recentWanted(const QString& path);
    void importWanted();
    void exportWanted();
    void backupWanted();
    void secondBackupPlaceWanted();
    void verifyWanted();
    void closeWanted();
    void chooseEngineWanted();
    void newEngineWanted();
    void settingsWanted();
    void racesWanted();
    void testersWanted();
    void recordsWanted();
    void changesWanted();
    void retireWanted();
    void placeWanted(coilbook::WorkPlace place);
    void cautionsWanted();
    void aboutWanted();

private:
    void buildLogbookMenu();
    void buildEngineMenu();
    void buildEditMenu();
    void buildViewMenu();
    void buildHelpMenu();
    template <class Value>
    void addChoices(QMenu* menu, const QList<std::pair<QString, Value>>& choices, Value now,
                    void (Preferences::*set)(Value));
    void fillRecent();
    /// Greys what cannot be done now.
    void refresh();
    void refreshUndo();

    QMainWindow& m_window;
    LogbookSession& m_session;
    Preferences& m_preferences;
    bool m_importing = false;
    QMenu* m_recent = nullptr;
    QAction* m_undo = nullptr;
    QAction* m_redo = nullptr;
    QAction* m_import = nullptr;
    QAction* m_retire = nullptr;
    QList<QAction*> m_needLogbook; ///< an open logbook
    QList<QAction*> m_needEngine;  ///< a selected engine
    QList<QAction*> m_needWriting; ///< a logbook that can be written to, besides
    std::array<QAction*, 3> m_places{};
};

} // namespace coilbook
