#include "ui/dialogs/testers_panel.h"

#include "core/support/text.h"
#include "core/testers/tester_budget.h"
#include "core/wording/tester_words.h"
#include "core/wording/wording.h"
#include "ui/dialogs/accuracy_field.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/quantity_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>

namespace coilbook {

namespace {

/// As it was written down, with its unit.
QString typedText(const std::optional<TypedForce>& force) {
    return force ? QStringLiteral("%1 %2").arg(force->text(), Quantities(force->unit()).unitName())
                 : QString();
}

/// With its sign; one written in the other unit is shown converted.
QString zeroText(const std::optional<ZeroOffset>& offset, ForceUnit unit) {
    if (!offset) {
        return {};
    }
    QString size = offset->size.unit() == unit
                       ? offset->size.text()
                       : QString::number(offset->size.force().in(unit), 'f', 2);
    return (offset->below ? QStringLiteral("-") : QString()) +
           size.replace(QLatin1Char('.'), QLocale().decimalPoint());
}

} // namespace

TestersPanel::TestersPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_name(new QLineEdit(m_form))
    , m_range(new QuantityField(preferences.forceUnit(), m_form))
    , m_graduation(new QuantityField(preferences.forceUnit(), m_form))
    , m_calibrated(new QCheckBox(tr("&Known, on"), m_form))
    , m_calibratedOn(new DateField(m_form))
    , m_note(new QLineEdit(m_form))
    , m_unit(new QComboBox(m_form))
    , m_accuracy(new AccuracyField(m_form))
    , m_zero(new QLineEdit(m_form))
    , m_corrects(new QCheckBox(tr("&Judge by its corrected readings"), m_form))
    , m_suitability(new QLabel(m_form)) {
    addFields();
    build({tr("Tester"), tr("Range"), tr("Division"), tr("Calibrated")}, tr("New t&ester"),
          tr("No testers yet. Note each one that the shop uses: a tester with a small range reads "
             "truer than one with a large range, and the sheet names the one that was used."));
}

void TestersPanel::addFields() {
    m_name->setObjectName(QStringLiteral("name"));
    m_range->setObjectName(QStringLiteral("range"));
    m_graduation->setObjectName(QStringLiteral("graduation"));
    m_calibrated->setObjectName(QStringLiteral("calibrated"));
    m_calibratedOn->setObjectName(QStringLiteral("calibratedOn"));
    m_calibratedOn->setAccessibleName(tr("Calibrated on"));
    m_unit->setObjectName(QStringLiteral("unit"));
    m_zero->setObjectName(QStringLiteral("zero"));
    m_corrects->setObjectName(QStringLiteral("corrects"));
    m_suitability->setObjectName(QStringLiteral("suitability"));
    m_zero->setInputMethodHints(Qt::ImhFormattedNumbersOnly);
    m_zero->setPlaceholderText(tr("what it shows with no load, such as -1.5"));
    m_unit->addItem(tr("not noted"));
    for (const ForceUnit unit : {ForceUnit::PoundForce, ForceUnit::Newton}) {
        m_unit->addItem(Quantities(unit).unitName(), static_cast<int>(unit));
    }
    m_suitability->setTextFormat(Qt::PlainText);
    m_suitability->setWordWrap(true);
    m_suitability->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::MinimumExpanding);
    connect(m_calibrated, &QCheckBox::toggled, m_calibratedOn, &QWidget::setEnabled);
    auto* calibration = new QWidget(m_form);
    auto* row = new QHBoxLayout(calibration);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_calibrated);
    row->addWidget(m_calibratedOn, 1);
    calibration->setFocusProxy(m_calibrated);
    m_form->addField(tr("&Name of the tester"), m_name);
    m_form->addField(tr("&Range, full scale"), m_range);
    m_form->addField(tr("Smallest &division"), m_graduation);
    m_form->addField(tr("Its dial shows"), m_unit);
    m_form->addField(tr("&Accuracy"), m_accuracy);
    m_form->addField(tr("&Zero is off by"), m_zero);
    m_form->addField(tr("Calibration"), calibration);
    m_form->addField(QString(), m_corrects);
    m_form->addField(tr("Good enough?"), m_suitability);
    m_form->addField(tr("No&te"), m_note);
    for (QLineEdit* field :
         {static_cast<QLineEdit*>(m_range), static_cast<QLineEdit*>(m_graduation), m_zero}) {
        connect(field, &QLineEdit::textEdited, this, &TestersPanel::showSuitability);
    }
    connect(m_accuracy, &AccuracyField::edited, this, &TestersPanel::showSuitability);
    connect(m_corrects, &QCheckBox::toggled, this, &TestersPanel::showSuitability);
}

std::vector<RecordPanel::Line> TestersPanel::lines() const {
    std::vector<Line> result;
    for (const Tester& tester : m_session.testers()) {
        result.push_back({tester.id.uuid(),
                          {tester.name, typedText(tester.range), typedText(tester.graduation),
                           calibrationOf(tester)}});
    }
    return result;
}

void TestersPanel::fill(const QUuid& record) {
    const std::vector<Tester>& testers = m_session.testers();
    const auto found = std::find_if(testers.begin(), testers.end(), [&](const Tester& tester) {
        return tester.id.uuid() == record;
    });
    const Tester tester = found != testers.end() ? *found : Tester{};
    m_name->setText(tester.name);
    m_range->setTyped(tester.range);
    m_graduation->setTyped(tester.graduation);
    const bool known = tester.calibratedOn.isValid();
    m_calibrated->setChecked(known);
    m_calibratedOn->setEnabled(known);
    m_calibratedOn->setDate(known ? tester.calibratedOn : QDate::currentDate());
    m_note->setText(tester.note);
    m_unit->setCurrentIndex(tester.unit ? m_unit->findData(static_cast<int>(*tester.unit)) : 0);
    m_accuracy->setAccuracy(tester.accuracy);
    m_zeroSet = tester.zeroOffset;
    m_zeroShown = zeroText(tester.zeroOffset, m_preferences.forceUnit());
    m_zero->setText(m_zeroShown);
    m_corrects->setChecked(tester.corrects);
    m_shown = record;
    showSuitability();
}

bool TestersPanel::accept(QuantityField* field) {
    if (field->isFault()) {
        m_form->showFault(field, tr("Give a force such as 160, or leave this empty."));
        return false;
    }
    return true;
}

std::optional<Change> TestersPanel::read(const QUuid& record,
                                         const std::optional<Authorship>& author) {
    Tester tester = typed();
    tester.id = TesterId(record);
    if (tester.name.isEmpty()) {
        m_form->showFault(
            m_name,
            wording::sentence(fail(LogbookFault::EmptyName, {QStringLiteral("tester")}).value()));
        return std::nullopt;
    }
    if (!accept(m_range) || !accept(m_graduation)) {
        return std::nullopt;
    }
    if (m_accuracy->isFault()) {
        m_form->showFault(m_accuracy, tr("Give the figure, such as 1.5, or choose “not known”."));
        return std::nullopt;
    }
    if (!m_zero->text().trimmed().isEmpty() && !zeroOffset()) {
        m_form->showFault(m_zero, tr("Give a force such as 1.5 or -1.5, or leave this empty."));
        return std::nullopt;
    }
    return author ? Change(AmendTester{tester, *author}) : Change(AddTester{tester});
}

Tester TestersPanel::typed() const {
    Tester tester;
    tester.id = TesterId(m_shown);
    tester.name = normalised(m_name->text());
    tester.range = m_range->typed();
    tester.graduation = m_graduation->typed();
    tester.calibratedOn = m_calibrated->isChecked() ? m_calibratedOn->date() : QDate();
    tester.note = normalised(m_note->text());
    if (m_unit->currentIndex() > 0) {
        tester.unit = static_cast<ForceUnit>(m_unit->currentData().toInt());
    }
    tester.accuracy = m_accuracy->accuracy();
    tester.zeroOffset = zeroOffset();
    tester.corrects = m_corrects->isChecked();
    return tester;
}

std::optional<ZeroOffset> TestersPanel::zeroOffset() const {
    if (m_zero->text() == m_zeroShown) {
        return m_zeroSet;
    }
    QString text = m_zero->text().trimmed();
    const QChar minus(0x2212); // as we print it
    const bool below = text.startsWith(QLatin1Char('-')) || text.startsWith(minus);
    if (below || text.startsWith(QLatin1Char('+'))) {
        text.remove(0, 1);
    }
    const auto size = TypedForce::parse(text.trimmed(), m_preferences.forceUnit());
    return size && size->isWithinBounds() ? std::optional(ZeroOffset{*size, below}) : std::nullopt;
}

void TestersPanel::showSuitability() {
    const Quantities quantities(m_preferences.forceUnit());
    const auto log = m_session.log();
    const JudgingRules rules = log ? log->engine.rules : JudgingRules{};
    const bool byTemperature = log && log->engine.correctsTemperature;
    const TesterBudget budget =
        budgetOf(basisOf(typed(), m_session.calibrations(), m_session.studies(), byTemperature),
                 rules.limit);
    QStringList lines{wording::suitabilitySentence(budget, quantities)};
    if (const std::optional<Force> pressure = usualPressure()) {
        lines << wording::pressureSentence(typed(), *pressure, quantities);
        lines.removeAll(QString());
    }
    lines << wording::missingSentences(budget) << wording::budgetLines(budget, quantities);
    if (const Calibration* newest =
            newestCalibration(m_session.calibrations(), TesterId(m_shown), QDate::currentDate())) {
        const QString overdue =
            wording::overdueSentence(normalised(m_name->text()), *newest, QDate::currentDate());
        if (!overdue.isEmpty()) {
            lines.prepend(overdue);
        }
    }
    m_suitability->setText(lines.join(QLatin1Char('\n')));
}

/// The mean baseline of the springs now in the engine.
std::optional<Force> TestersPanel::usualPressure() const {
    const auto history = m_session.history();
    if (!history) {
        return std::nullopt;
    }
    Force sum;
    int read = 0;
    for (const std::size_t life : fittedLives(*history)) {
        const std::vector<HistoryCell>& cells = history->lives[life].cells;
        if (!cells.empty()) {
            sum = sum + cells.front().mean();
            ++read;
        }
    }
    return read > 0 ? std::optional(sum / read) : std::nullopt;
}

/// When it was calibrated last, and when it is due: by its newest table, else by its own date.
QString TestersPanel::calibrationOf(const Tester& tester) const {
    const QDate today = QDate::currentDate();
    const Calibration* newest = newestCalibration(m_session.calibrations(), tester.id, today);
    return newest != nullptr ? wording::calibrationWords(*newest, today)
                             : tester.calibratedOn.toString(Qt::ISODate);
}

QWidget* TestersPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::EmptyName:
    case LogbookFault::NameDiffersInCaseOnly:
        return m_name;
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_calibratedOn;
    default:
        return nullptr;
    }
}

} // namespace coilbook
