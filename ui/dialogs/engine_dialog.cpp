#include "ui/dialogs/engine_dialog.h"

#include "core/wording/wording.h"
#include "ui/dialogs/author_fields.h"
#include "ui/dialogs/dialog_size.h"
#include "ui/dialogs/engine_facts_form.h"
#include "ui/dialogs/engine_layout_form.h"
#include "ui/dialogs/starting_set_form.h"
#include "ui/preferences.h"
#include "ui/widgets/scrolling.h"

#include <QDialogButtonBox>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

EngineDialog::EngineDialog(LogbookSession& session, Preferences& preferences,
                           const std::optional<Engine>& engine, QWidget* parent)
    : QDialog(parent)
    , m_session(session)
    , m_amended(engine)
    , m_pages(new QTabWidget(this))
    , m_facts(new EngineFactsForm(preferences))
    , m_layout(new EngineLayoutForm) {
    setWindowTitle(engine ? tr("Settings of the engine") : tr("New engine"));
    setAttribute(Qt::WA_DeleteOnClose);
    if (engine) {
        m_engine = *engine;
        m_author = new AuthorFields(*m_facts, preferences);
        m_facts->setEngine(*engine);
        tellLapsMissing();
        m_layout->setLayoutOf(engine->layout);
    } else {
        m_engine.id = EngineId::make();
        m_springs = new StartingSetForm;
        connect(m_layout, &EngineLayoutForm::layoutChanged, m_springs,
                &StartingSetForm::setLayoutOf);
    }
    m_pages->addTab(scrolling(m_facts), tr("&Engine"));
    m_pages->addTab(scrolling(m_layout), tr("&Layout"));
    if (m_springs != nullptr) {
        m_pages->addTab(m_springs, tr("S&prings"));
    }
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_save = buttons->addButton(engine ? tr("Save the change") : tr("Add the engine"),
                                QDialogButtonBox::AcceptRole);
    m_save->setObjectName(QStringLiteral("save"));
    m_save->setDefault(true);
    m_save->setEnabled(!session.isReadOnly());
    connect(buttons, &QDialogButtonBox::accepted, this, &EngineDialog::save);
    connect(buttons, &QDialogButtonBox::rejected, this, &EngineDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_pages);
    column->addWidget(buttons);
    giveRoom(*this, 110, 28);
}

/// All races of the engine up to the count of its newest inspection need their laps.
void EngineDialog::tellLapsMissing() {
    const auto log = m_session.log();
    const auto history = m_session.history();
    if (!log || !history || log->engine.id != m_engine.id) {
        return;
    }
    std::vector<int> missing;
    for (int number = 1; number <= history->racesNow; ++number) {
        const bool known = std::any_of(log->races.begin(), log->races.end(), [&](const Race& race) {
            return race.number == number && race.laps.has_value();
        });
        if (!known) {
            missing.push_back(number);
        }
    }
    m_facts->tellLapsMissing(missing);
}

void EngineDialog::refuse(QWidget* page, QWidget* field, const QString& sentence) {
    m_pages->setCurrentIndex(page == m_layout ? 1 : 0);
    if (page == m_layout) {
        m_layout->showFault(sentence);
    } else {
        m_facts->showFault(field, sentence);
    }
}

void EngineDialog::save() {
    if (!m_facts->readInto(m_engine)) {
        m_pages->setCurrentIndex(0);
        return;
    }
    const Result<EngineLayout> layout = m_layout->layoutNow();
    if (!layout) {
        m_pages->setCurrentIndex(1); // the form says there what does not fit
        return;
    }
    m_engine.layout = *layout;
    if (m_amended) {
        if (!m_author->hasReason()) {
            refuse(m_facts, m_author->whyField(),
                   wording::sentence(fail(LogbookFault::WhyMissing).value()));
            return;
        }
        m_save->setEnabled(false);
        m_session.apply(AmendEngine{m_engine, m_author->sign()}, this,
                        [this](const Result<void>& result) { finish(result); });
        return;
    }
    AddEngine change{m_engine, {}, {}};
    if (!m_springs->readInto(change)) {
        m_pages->setCurrentIndex(2);
        return;
    }
    m_save->setEnabled(false);
    m_session.apply(change, this, [this](const Result<void>& result) { finish(result); });
}

void EngineDialog::finish(const Result<void>& result) {
    m_save->setEnabled(true);
    if (result) {
        Q_EMIT saved(m_engine.id);
        accept();
        return;
    }
    const auto* fault = std::get_if<LogbookFault>(&result.error().fault);
    const bool aboutLayout = fault != nullptr && *fault == LogbookFault::BadLayout;
    QWidget* field = fault != nullptr ? m_facts->fieldAt(*fault) : nullptr;
    refuse(aboutLayout ? static_cast<QWidget*>(m_layout) : m_facts, field,
           wording::sentence(result.error()));
}

} // namespace coilbook
