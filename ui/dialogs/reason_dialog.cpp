#include "ui/dialogs/reason_dialog.h"

#include "core/wording/wording.h"
#include "ui/dialogs/author_fields.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"

#include <QDialogButtonBox>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace coilbook {

ReasonDialog::ReasonDialog(LogbookSession& session, Preferences& preferences, const QString& title,
                           const QString& advice, const QString& action, MakeChange makeChange,
                           QWidget* parent)
    : QDialog(parent)
    , m_session(session)
    , m_makeChange(std::move(makeChange))
    , m_form(new FaultForm(this)) {
    setWindowTitle(title);
    setAttribute(Qt::WA_DeleteOnClose);
    m_form->addAdvice(advice);
    m_author = new AuthorFields(*m_form, preferences);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_save = buttons->addButton(action, QDialogButtonBox::AcceptRole);
    m_save->setObjectName(QStringLiteral("save"));
    m_save->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &ReasonDialog::save);
    connect(buttons, &QDialogButtonBox::rejected, this, &ReasonDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_form);
    column->addWidget(buttons);
    setMinimumWidth(fontMetrics().averageCharWidth() * 60);
}

void ReasonDialog::save() {
    m_form->clearFaults();
    if (!m_author->hasReason()) {
        m_form->showFault(m_author->whyField(),
                          wording::sentence(fail(LogbookFault::WhyMissing).value()));
        return;
    }
    m_save->setEnabled(false);
    m_session.apply(m_makeChange(m_author->sign()), this, [this](const Result<void>& result) {
        m_save->setEnabled(true);
        if (result) {
            accept();
        } else {
            m_form->showFault(nullptr, wording::sentence(result.error()));
        }
    });
}

} // namespace coilbook
