#include "ui/dialogs/record_panel.h"

#include "core/wording/wording.h"
#include "ui/dialogs/amendment_list.h"
#include "ui/dialogs/author_fields.h"
#include "ui/dialogs/fault_form.h"
#include "ui/look/icons.h"
#include "ui/widgets/scrolling.h"

#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace coilbook {

RecordPanel::RecordPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_form(new FaultForm)
    , m_list(new QTreeWidget(this))
    , m_changes(new AmendmentList(this))
    , m_empty(new QLabel(this))
    , m_add(new QPushButton(icon(Picture::Add), {}, this))
    , m_save(new QPushButton(icon(Picture::Saved), tr("Save"), this)) {
    m_list->setObjectName(QStringLiteral("records"));
    m_add->setObjectName(QStringLiteral("add"));
    m_save->setObjectName(QStringLiteral("save"));
}

void RecordPanel::build(const QStringList& columns, const QString& addText,
                        const QString& emptyText) {
    m_author = new AuthorFields(*m_form, m_preferences);
    m_canAdd = !addText.isEmpty();
    m_add->setText(addText);
    m_add->setVisible(m_canAdd);
    m_empty->setText(emptyText);
    m_empty->setTextFormat(Qt::PlainText);
    m_empty->setWordWrap(true);
    m_list->setHeaderLabels(columns);
    m_list->setRootIsDecorated(false);
    m_list->setUniformRowHeights(true);
    m_list->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_changes->setMaximumHeight(fontMetrics().lineSpacing() * 6);

    auto* left = new QWidget(this);
    auto* leftColumn = new QVBoxLayout(left);
    leftColumn->setContentsMargins(0, 0, 0, 0);
    leftColumn->addWidget(m_empty);
    leftColumn->addWidget(m_list, 1);
    leftColumn->addWidget(m_add, 0, Qt::AlignLeft);

    auto* right = new QWidget(this);
    auto* rightColumn = new QVBoxLayout(right);
    rightColumn->setContentsMargins(0, 0, 0, 0);
    rightColumn->addWidget(scrolling(m_form), 1);
    rightColumn->addWidget(m_save, 0, Qt::AlignRight);
    rightColumn->addWidget(m_changes);

    auto* halves = new QSplitter(this);
    halves->setChildrenCollapsible(false);
    halves->addWidget(left);
    halves->addWidget(right);
    halves->setStretchFactor(0, 3);
    halves->setStretchFactor(1, 2);
    auto* column = new QVBoxLayout(this);
    column->addWidget(halves);

    connect(m_list, &QTreeWidget::itemSelectionChanged, this, &RecordPanel::showChosen);
    connect(m_add, &QPushButton::clicked, this, &RecordPanel::startNew);
    connect(m_save, &QPushButton::clicked, this, &RecordPanel::save);
    connect(&m_session, &LogbookSession::logChanged, this, &RecordPanel::refresh);
    connect(&m_session, &LogbookSession::testersChanged, this, &RecordPanel::refresh);
    refresh();
}

void RecordPanel::refresh() {
    {
        const QSignalBlocker quiet(m_list);
        m_list->clear();
        for (const Line& line : lines()) {
            auto* item = new QTreeWidgetItem(m_list, line.cells);
            item->setData(0, Qt::UserRole, line.record);
        }
    }
    const bool any = m_list->topLevelItemCount() > 0;
    m_empty->setVisible(!any);
    m_list->setVisible(any);
    m_add->setEnabled(!m_session.isReadOnly());
    if (!m_record.isNull()) {
        select(m_record);
    } else if (any) {
        m_list->setCurrentItem(m_list->topLevelItem(0));
    } else {
        show({});
    }
}

void RecordPanel::select(const QUuid& record) {
    for (int i = 0; i < m_list->topLevelItemCount(); ++i) {
        QTreeWidgetItem* item = m_list->topLevelItem(i);
        if (item->data(0, Qt::UserRole).toUuid() == record) {
            m_list->setCurrentItem(item);
            show(record);
            return;
        }
    }
}

void RecordPanel::showChosen() {
    const QList<QTreeWidgetItem*> chosen = m_list->selectedItems();
    if (!chosen.isEmpty()) {
        show(chosen.constFirst()->data(0, Qt::UserRole).toUuid());
    }
}

void RecordPanel::startNew() {
    {
        const QSignalBlocker quiet(m_list);
        m_list->setCurrentItem(nullptr);
    }
    show({});
    m_form->setFocus();
}

void RecordPanel::show(const QUuid& record) {
    m_record = record;
    m_form->clearFaults();
    fill(record);
    const bool isNew = record.isNull();
    m_author->clearReason();
    m_author->setEnabled(!isNew);
    m_form->setEnabled(!m_session.isReadOnly() && (!isNew || m_canAdd));
    m_save->setEnabled(m_form->isEnabled());
    m_save->setText(isNew ? tr("Save as new") : tr("Save the change"));
    if (const auto log = m_session.log()) {
        m_changes->showAmendments(*log, record);
    }
    m_changes->setVisible(m_changes->topLevelItemCount() > 0);
}

void RecordPanel::save() {
    m_form->clearFaults();
    const bool isNew = m_record.isNull();
    if (!isNew && !m_author->hasReason()) {
        m_form->showFault(m_author->whyField(),
                          wording::sentence(fail(LogbookFault::WhyMissing).value()));
        return;
    }
    const QUuid record = isNew ? makeUuid7() : m_record;
    const std::optional<Change> change =
        read(record, isNew ? std::nullopt : std::optional(m_author->sign()));
    if (!change) {
        return;
    }
    m_save->setEnabled(false);
    m_session.apply(*change, this,
                    [this, record](const Result<void>& result) { finish(record, result); });
}

void RecordPanel::finish(const QUuid& record, const Result<void>& result) {
    m_save->setEnabled(true);
    if (result) {
        m_record = record; // the list comes anew in a moment and goes to it
        return;
    }
    const auto* fault = std::get_if<LogbookFault>(&result.error().fault);
    QWidget* field = nullptr;
    if (fault != nullptr) {
        field = *fault == LogbookFault::WhyMissing ? m_author->whyField() : fieldAt(*fault);
    }
    m_form->showFault(field, wording::sentence(result.error()));
}

} // namespace coilbook
