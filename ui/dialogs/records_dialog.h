#pragma once

#include "core/domain/ids.h"

#include <QDialog>

#include <optional>

class QTabWidget;

namespace coilbook {

class AmendmentList;
class LogbookSession;
class Preferences;
class ShelfPanel;

/// The facts behind the readings: races run and planned, other running, testers, inspections,
/// springs and work at them, and every change that was made to them afterwards. Shown with open():
/// nothing waits for it.
class RecordsDialog : public QDialog {
    Q_OBJECT
public:
    enum class Page {
        Races,
        Running,
        Inspections,
        Sittings,
        Springs,
        LevelChanges,
        Calendar,
        Shelf,
        Changes
    };

    RecordsDialog(LogbookSession& session, Preferences& preferences, Page first,
                  QWidget* parent = nullptr);

    /// The shelf, at that spring, or at the form of a new spare.
    void showShelf(const std::optional<SpringId>& spring);

private:
    void showChanges();

    LogbookSession& m_session;
    QTabWidget* m_pages;
    ShelfPanel* m_shelf;
    AmendmentList* m_changes;
};

} // namespace coilbook
