#pragma once

#include <QDialog>

class QTabWidget;

namespace coilbook {

class AmendmentList;
class LogbookSession;
class Preferences;

/// The facts behind the readings: races and other running, testers, inspections, springs and work
/// at them, and every change that was made to them afterwards. Shown with open(): nothing waits for
/// it.
class RecordsDialog : public QDialog {
    Q_OBJECT
public:
    enum class Page { Races, Running, Inspections, Sittings, Springs, LevelChanges, Changes };

    RecordsDialog(LogbookSession& session, Preferences& preferences, Page first,
                  QWidget* parent = nullptr);

private:
    void showChanges();

    LogbookSession& m_session;
    QTabWidget* m_pages;
    AmendmentList* m_changes;
};

} // namespace coilbook
