#include "ui/dialogs/verify_dialog.h"

#include "core/services/logbook_session.h"
#include "core/wording/findings.h"
#include "core/wording/wording.h"
#include "ui/dialogs/dialog_size.h"

#include <QDialogButtonBox>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace coilbook {

namespace {

QLabel* plainLabel(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

} // namespace

VerifyDialog::VerifyDialog(LogbookSession& session, QWidget* parent)
    : QDialog(parent)
    , m_session(session)
    , m_outcome(plainLabel(this))
    , m_list(new QPlainTextEdit(this))
    , m_seal(new QLineEdit(this))
    , m_ask(new QPushButton(tr("&Ask"), this))
    , m_again(new QPushButton(tr("Check &again"), this))
    , m_answer(plainLabel(this)) {
    setWindowTitle(tr("Verify the logbook"));
    setAttribute(Qt::WA_DeleteOnClose);
    m_outcome->setObjectName(QStringLiteral("outcome"));
    m_list->setObjectName(QStringLiteral("findings"));
    m_list->setReadOnly(true);
    m_list->setTabChangesFocus(true);
    m_seal->setObjectName(QStringLiteral("seal"));
    m_seal->setPlaceholderText(QStringLiteral("118:9f3a2b7c01de44aa"));
    m_ask->setObjectName(QStringLiteral("ask"));
    m_answer->setObjectName(QStringLiteral("answer"));
    auto* seal = new QLabel(tr("&Seal noted on a sheet"), this);
    seal->setBuddy(m_seal);
    auto* row = new QHBoxLayout;
    row->addWidget(seal);
    row->addWidget(m_seal, 1);
    row->addWidget(m_ask);
    auto* meaning = plainLabel(this);
    meaning->setText(wording::whatSealsProve());
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(m_again, QDialogButtonBox::ActionRole);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_outcome);
    column->addWidget(m_list, 1);
    column->addLayout(row);
    column->addWidget(m_answer);
    column->addWidget(meaning);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &VerifyDialog::reject);
    connect(m_again, &QPushButton::clicked, this, &VerifyDialog::check);
    connect(m_ask, &QPushButton::clicked, this, &VerifyDialog::checkSeal);
    connect(m_seal, &QLineEdit::textChanged, this, [this] { m_answer->clear(); });
    m_again->setAutoDefault(false);
    m_ask->setDefault(true); // Enter in the field asks
    m_seal->setFocus();
    giveRoom(*this, 90, 26);
    check();
}

void VerifyDialog::setBusy(bool busy) {
    m_ask->setEnabled(!busy);
    m_again->setEnabled(!busy);
    if (busy) {
        m_outcome->setText(
            tr("Checking %1 …", "a file").arg(QFileInfo(m_session.path()).fileName()));
    }
}

void VerifyDialog::check() {
    setBusy(true);
    m_session.verify({}, this, [this](const Result<LogbookCheck>& result) {
        setBusy(false);
        if (result) {
            list(result->report);
        } else {
            m_outcome->setText(wording::line(result.error()));
        }
    });
}

void VerifyDialog::checkSeal() {
    const std::optional<NotedSeal> noted = NotedSeal::parse(m_seal->text());
    if (!noted) {
        m_answer->setText(tr("This is not a seal. Type its number, a colon and at least 8 of its "
                             "digits, as on the sheet."));
        return;
    }
    setBusy(true);
    m_session.verify(noted, this, [this, noted](const Result<LogbookCheck>& result) {
        setBusy(false);
        if (!result) {
            m_outcome->setText(wording::line(result.error()));
            return;
        }
        list(result->report);
        m_answer->setText(wording::sealAnswer(*result->seal, *noted, result->report));
    });
}

void VerifyDialog::list(const VerifyReport& report) {
    QStringList lines;
    for (const Finding& finding : report.findings) {
        lines << wording::findingLine(finding);
    }
    QStringList sentences = wording::checked(report);
    if (report.isSound()) {
        m_outcome->setText(sentences.takeFirst());
    } else {
        const qint64 found = static_cast<qint64>(report.findings.size()) + report.more;
        m_outcome->setText(
            found == 1 ? tr("1 thing in this logbook is not as it should be. Nothing was changed.")
                       : tr("%1 things in this logbook are not as they should be. Nothing was "
                            "changed.")
                             .arg(found));
    }
    m_list->setPlainText((lines + sentences).join(QLatin1Char('\n')));
}

} // namespace coilbook
