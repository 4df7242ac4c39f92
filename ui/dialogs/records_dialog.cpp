#include "ui/dialogs/records_dialog.h"

#include "core/services/logbook_session.h"
#include "ui/dialogs/amendment_list.h"
#include "ui/dialogs/calendar_panel.h"
#include "ui/dialogs/dialog_size.h"
#include "ui/dialogs/inspections_panel.h"
#include "ui/dialogs/level_changes_panel.h"
#include "ui/dialogs/races_panel.h"
#include "ui/dialogs/running_panel.h"
#include "ui/dialogs/shelf_panel.h"
#include "ui/dialogs/sittings_panel.h"
#include "ui/dialogs/springs_panel.h"
#include "ui/preferences.h"

#include <QDialogButtonBox>
#include <QTabWidget>
#include <QVBoxLayout>

namespace coilbook {

RecordsDialog::RecordsDialog(LogbookSession& session, Preferences& preferences, Page first,
                             QWidget* parent)
    : QDialog(parent)
    , m_session(session)
    , m_pages(new QTabWidget(this))
    , m_shelf(new ShelfPanel(session, preferences))
    , m_changes(new AmendmentList) {
    const auto log = session.log();
    setWindowTitle(log ? tr("Records of %1").arg(log->engine.name) : tr("Records"));
    setAttribute(Qt::WA_DeleteOnClose);
    m_pages->addTab(new RacesPanel(session, preferences), tr("Races"));
    m_pages->addTab(new RunningPanel(session, preferences), tr("Other running"));
    m_pages->addTab(new InspectionsPanel(session, preferences), tr("Inspections"));
    m_pages->addTab(new SittingsPanel(session, preferences), tr("Who and with what"));
    m_pages->addTab(new SpringsPanel(session, preferences), tr("Springs"));
    m_pages->addTab(new LevelChangesPanel(session, preferences), tr("Work at springs"));
    m_pages->addTab(new CalendarPanel(session, preferences), tr("Calendar"));
    m_pages->addTab(m_shelf, tr("Shelf"));
    m_pages->addTab(m_changes, tr("All changes"));
    m_pages->setCurrentIndex(static_cast<int>(first));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &RecordsDialog::reject);
    connect(&session, &LogbookSession::logChanged, this, &RecordsDialog::showChanges);
    connect(&session, &LogbookSession::closed, this, &RecordsDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_pages);
    column->addWidget(buttons);
    showChanges();
    giveRoom(*this, 150, 28);
}

void RecordsDialog::showShelf(const std::optional<SpringId>& spring) {
    m_pages->setCurrentWidget(m_shelf);
    if (spring) {
        m_shelf->selectSpring(*spring);
    } else {
        m_shelf->startNew();
    }
}

void RecordsDialog::showChanges() {
    if (const auto log = m_session.log()) {
        m_changes->showAmendments(*log);
    }
}

} // namespace coilbook
