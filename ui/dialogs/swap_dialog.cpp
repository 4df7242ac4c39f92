#include "ui/dialogs/swap_dialog.h"

#include "core/wording/wording.h"
#include "ui/dialogs/fault_form.h"
#include "ui/widgets/date_field.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

SwapDialog::SwapDialog(std::shared_ptr<const EngineLog> log, const Place& place,
                       const Preferences& preferences, const Clock& clock, QWidget* parent)
    : QDialog(parent)
    , m_log(std::move(log))
    , m_place(place)
    , m_preferences(preferences)
    , m_clock(clock)
    , m_shelf(proposedSpares(*m_log, historyOf(*m_log), place))
    , m_form(new FaultForm(this))
    , m_label(new QComboBox(this))
    , m_match(new QLabel(this))
    , m_part(new QLineEdit(this))
    , m_batch(new QLineEdit(this))
    , m_date(new DateField(this))
    , m_races(new QSpinBox(this))
    , m_baseline(new QLineEdit(this))
    , m_tester(new QComboBox(this))
    , m_reason(new QLineEdit(this))
    , m_outgoing(new QComboBox(this)) {
    setWindowTitle(tr("Swap at %1", "a place").arg(placeText(place)));
    m_label->setEditable(true);
    m_label->setInsertPolicy(QComboBox::NoInsert);
    m_label->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_races->setRange(0, 9999);
    const QString unit = m_preferences.quantities().unitName();
    m_form->addField(tr("S&pring put in"), m_label);
    m_match->setTextFormat(Qt::PlainText);
    m_match->setWordWrap(true);
    m_form->addField(QString(), m_match);
    m_form->addField(tr("Pa&rt"), m_part);
    m_form->addField(tr("&Batch"), m_batch);
    m_form->addField(tr("&Day of the swap"), m_date);
    m_form->addField(tr("Races r&un by then"), m_races);
    m_form->addField(tr("Baseline, %1 (may stay empty)").arg(unit), m_baseline);
    m_form->addField(tr("&Tester of the baseline"), m_tester);
    m_form->addField(tr("Rea&son"), m_reason);
    m_outgoing->setObjectName(QStringLiteral("outgoing"));
    m_outgoing->addItem(tr("goes to scrap"));
    m_outgoing->addItem(tr("goes on the shelf"));
    m_form->addField(tr("Spring taken &out"), m_outgoing);
    m_baseline->setPlaceholderText(tr("readings of the spring put in, a space between hits"));

    auto* buttons = new QDialogButtonBox(this);
    m_record = buttons->addButton(tr("Record the swap"), QDialogButtonBox::AcceptRole);
    m_record->setDefault(true);
    buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole);
    auto* intro = new QLabel(this);
    intro->setTextFormat(Qt::PlainText);
    intro->setWordWrap(true);
    const SwapPrefill prefill = swapPrefill(*m_log, place);
    intro->setText(
        prefill.outgoing
            ? tr("%1: spring %2 comes out. Its history stays.", "a place, a label")
                  .arg(wording::place(place), prefill.outgoing->label)
            : tr("%1: no spring stands here yet.", "a place").arg(wording::place(place)));
    auto* column = new QVBoxLayout(this);
    column->addWidget(intro);
    column->addWidget(m_form, 1);
    column->addWidget(buttons);
    fillIn(prefill);
    m_label->setFocus();
    setMinimumWidth(fontMetrics().averageCharWidth() * 70);

    connect(m_label, &QComboBox::currentTextChanged, this, &SwapDialog::onLabel);
    onLabel();
    connect(buttons, &QDialogButtonBox::accepted, this, &SwapDialog::record);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

void SwapDialog::fillIn(const SwapPrefill& prefill) {
    for (const SpareProposal& proposal : m_shelf) {
        m_label->addItem(proposal.spare.spring.label);
    }
    m_outgoing->setEnabled(prefill.outgoing.has_value());
    // The spare that matches best is proposed; without one, a new spring.
    m_label->setCurrentText(m_shelf.empty() || !m_shelf.front().apart || !m_shelf.front().samePart
                                ? prefill.label
                                : m_shelf.front().spare.spring.label);
    m_label->lineEdit()->selectAll();
    if (prefill.outgoing) {
        m_part->setText(prefill.outgoing->part);
    }
    if (!prefill.on.isNull()) {
        m_date->setDate(prefill.on);
    }
    m_races->setValue(prefill.races);
    m_tester->addItem(tr("not noted"));
    for (const Tester& tester : m_log->testers) {
        m_tester->addItem(tester.name, tester.id.text());
        if (prefill.tester == tester.id) {
            m_tester->setCurrentIndex(m_tester->count() - 1);
        }
    }
}

QString SwapDialog::offerOf(const SpareProposal& proposal) const {
    const Quantities quantities = m_preferences.quantities();
    const ShelvedSpring& spare = proposal.spare;
    QStringList parts;
    if (proposal.apart) {
        parts << tr("%1 from the set's pressure when new", "a force")
                     .arg(quantities.forceWithUnit(*proposal.apart));
    } else {
        parts << tr("never measured");
    }
    if (spare.height) {
        parts << tr("measured at %1 in", "a height")
                     .arg(QString::number(spare.height->inInches(), 'f', 3));
    }
    parts << tr("races run: %1").arg(spare.races);
    if (!proposal.samePart) {
        parts << tr("another part than the set's");
    }
    return tr("On the shelf: %1.", "facts of a spare").arg(parts.join(QStringLiteral(", ")));
}

/// A spring from the shelf keeps its part and batch: they are shown and cannot be typed.
void SwapDialog::onLabel() {
    const QString label = m_label->currentText().trimmed();
    const auto known =
        std::find_if(m_shelf.begin(), m_shelf.end(), [&](const SpareProposal& proposal) {
            return proposal.spare.spring.label == label;
        });
    const bool isNew = known == m_shelf.end();
    if (!isNew) {
        m_part->setText(known->spare.spring.part);
        m_batch->setText(known->spare.spring.batch);
    }
    m_match->setText(isNew ? tr("A new spring, not from the shelf.") : offerOf(*known));
    m_part->setReadOnly(!isNew);
    m_batch->setReadOnly(!isNew);
}

SwapEntry SwapDialog::entry() const {
    SwapEntry entry;
    entry.place = m_place;
    entry.label = m_label->currentText();
    entry.part = m_part->text();
    entry.batch = m_batch->text();
    entry.on = m_date->date();
    entry.races = m_races->value();
    entry.reason = m_reason->text();
    entry.outgoingTo = m_outgoing->currentIndex() == 0 ? Storage::Scrap : Storage::Shelf;
    entry.outgoingReason = entry.reason;
    static const QRegularExpression gap(QStringLiteral("[\\s;]+"));
    entry.hits = m_baseline->text().split(gap, Qt::SkipEmptyParts);
    entry.unit = m_preferences.forceUnit();
    if (m_tester->currentIndex() > 0) {
        entry.tester = TesterId::fromText(m_tester->currentData().toString());
    }
    entry.inspector = m_preferences.personName();
    return entry;
}

QWidget* SwapDialog::fieldOf(SwapField field) const {
    switch (field) {
    case SwapField::Place:
        return nullptr;
    case SwapField::Label:
        return m_label;
    case SwapField::Date:
        return m_date;
    case SwapField::Races:
        return m_races;
    case SwapField::Baseline:
        return m_baseline;
    }
    return nullptr;
}

void SwapDialog::record() {
    m_form->clearFaults();
    const auto swap = swapOf(*m_log, entry(), m_clock);
    if (swap) {
        m_record->setEnabled(false); // until the disk has answered
        Q_EMIT swapReady(*swap);
        return;
    }
    // Backwards, so that the cursor ends in the first field at fault.
    const std::vector<SwapProblem>& problems = swap.error();
    for (auto problem = problems.rbegin(); problem != problems.rend(); ++problem) {
        m_form->showFault(fieldOf(problem->field), wording::sentence(problem->error));
    }
    growToFit();
}

/// Sentences under the fields need room of their own.
void SwapDialog::growToFit() {
    layout()->activate();
    const int needed = layout()->hasHeightForWidth() ? layout()->totalHeightForWidth(width())
                                                     : layout()->totalSizeHint().height();
    resize(width(), std::max(height(), needed));
}

void SwapDialog::showFailure(const QString& sentence) {
    m_record->setEnabled(true);
    m_form->showFault(nullptr, sentence);
    growToFit();
}

QString SwapDialog::faults() const {
    return m_form->faults();
}

} // namespace coilbook
