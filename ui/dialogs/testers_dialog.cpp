#include "ui/dialogs/testers_dialog.h"

#include "core/services/logbook_session.h"
#include "ui/dialogs/calibrations_panel.h"
#include "ui/dialogs/dialog_size.h"
#include "ui/dialogs/studies_panel.h"
#include "ui/dialogs/testers_panel.h"

#include <QDialogButtonBox>
#include <QTabWidget>
#include <QVBoxLayout>

namespace coilbook {

TestersDialog::TestersDialog(LogbookSession& session, Preferences& preferences, Page first,
                             QWidget* parent)
    : QDialog(parent) {
    setWindowTitle(tr("Testers"));
    setAttribute(Qt::WA_DeleteOnClose, parent != nullptr);
    auto* pages = new QTabWidget(this);
    pages->addTab(new TestersPanel(session, preferences), tr("Testers"));
    pages->addTab(new CalibrationsPanel(session, preferences), tr("Calibrations"));
    pages->addTab(new StudiesPanel(session, preferences), tr("Repeatability"));
    pages->setCurrentIndex(static_cast<int>(first));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &TestersDialog::reject);
    connect(&session, &LogbookSession::closed, this, &TestersDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(pages);
    column->addWidget(buttons);
    giveRoom(*this, 150, 32);
}

} // namespace coilbook
