#include "ui/dialogs/calibrations_panel.h"

#include "core/support/text.h"
#include "core/testers/calibration_picture.h"
#include "core/wording/tester_words.h"
#include "ui/charts/calibration_chart.h"
#include "ui/dialogs/fault_form.h"
#include "ui/dialogs/record_lookup.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/force_table.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

namespace coilbook {

namespace {

enum Column { Reference, Indication, OffCurve, Columns };

constexpr int kYear = 1;

} // namespace

CalibrationsPanel::CalibrationsPanel(LogbookSession& session, Preferences& preferences,
                                     QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_tester(new QComboBox(m_form))
    , m_on(new DateField(m_form))
    , m_by(new QLineEdit(m_form))
    , m_certificate(new QLineEdit(m_form))
    , m_isDue(new QCheckBox(tr("&Due again on"), m_form))
    , m_due(new DateField(m_form))
    , m_unit(new QComboBox(m_form))
    , m_degree(new QComboBox(m_form))
    , m_table(new ForceTable(m_form))
    , m_chart(new CalibrationChart(m_form))
    , m_result(new QLabel(m_form))
    , m_withdrawn(new QCheckBox(tr("Ta&ken back: it does not count"), m_form)) {
    addFields();
    build({tr("Tester"), tr("Calibrated"), tr("By")}, tr("New c&alibration"),
          tr("No calibrations yet. Type the table of a certificate, reference force and what the "
             "tester showed: readings are then corrected by it, and a due date is kept in view."));
}

void CalibrationsPanel::addFields() {
    m_tester->setObjectName(QStringLiteral("tester"));
    m_on->setObjectName(QStringLiteral("calibratedOn"));
    m_by->setObjectName(QStringLiteral("by"));
    m_certificate->setObjectName(QStringLiteral("certificate"));
    m_isDue->setObjectName(QStringLiteral("isDue"));
    m_due->setObjectName(QStringLiteral("due"));
    m_unit->setObjectName(QStringLiteral("unit"));
    m_degree->setObjectName(QStringLiteral("degree"));
    m_table->setObjectName(QStringLiteral("points"));
    m_result->setObjectName(QStringLiteral("result"));
    m_withdrawn->setObjectName(QStringLiteral("withdrawn"));
    m_due->setAccessibleName(tr("Due again on"));
    m_chart->setAccessibleName(tr("Curve of the calibration"));
    for (const ForceUnit unit : {ForceUnit::PoundForce, ForceUnit::Newton}) {
        m_unit->addItem(Quantities(unit).unitName(), static_cast<int>(unit));
    }
    m_degree->addItem(tr("a straight line"), 1);
    m_degree->addItem(tr("a curve (second degree)"), 2);
    m_table->setTypedColumns(OffCurve);
    m_table->setGrowing(true);
    m_table->setMinimumHeight(fontMetrics().lineSpacing() * 9);
    m_result->setTextFormat(Qt::PlainText);
    m_result->setWordWrap(true);
    m_result->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::MinimumExpanding);
    auto* due = new QWidget(m_form);
    auto* row = new QHBoxLayout(due);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_isDue);
    row->addWidget(m_due, 1);
    due->setFocusProxy(m_isDue);
    m_form->addField(tr("&Tester"), m_tester);
    m_form->addField(tr("Calibrated &on"), m_on);
    m_form->addField(tr("&By"), m_by);
    m_form->addField(tr("Certi&ficate"), m_certificate);
    m_form->addField(tr("Next"), due);
    m_form->addField(tr("&Unit of the table"), m_unit);
    m_form->addField(tr("Correct by"), m_degree);
    m_form->addField(tr("Table, line by &line"), m_table);
    m_form->addField(tr("Curve"), m_chart);
    m_form->addField(tr("What it says"), m_result);
    m_form->addField(QString(), m_withdrawn);
    connect(m_isDue, &QCheckBox::toggled, m_due, &QWidget::setEnabled);
    connect(m_unit, &QComboBox::currentIndexChanged, this, &CalibrationsPanel::showCurve);
    connect(m_degree, &QComboBox::currentIndexChanged, this, &CalibrationsPanel::showCurve);
    connect(m_table, &ForceTable::typed, this, &CalibrationsPanel::showCurve);
}

std::vector<RecordPanel::Line> CalibrationsPanel::lines() const {
    std::vector<Line> result;
    const std::vector<Calibration>& all = m_session.calibrations();
    for (auto each = all.rbegin(); each != all.rend(); ++each) {
        const Tester* tester = recordWith(m_session.testers(), each->tester.uuid());
        const QString when = each->withdrawn
                                 ? tr("taken back")
                                 : wording::calibrationWords(*each, QDate::currentDate());
        result.push_back(
            {each->id.uuid(), {tester != nullptr ? tester->name : QString(), when, each->by}});
    }
    return result;
}

void CalibrationsPanel::offerTesters() {
    m_tester->clear();
    for (const Tester& tester : m_session.testers()) {
        m_tester->addItem(tester.name, tester.id.uuid());
    }
}

void CalibrationsPanel::fill(const QUuid& record) {
    Calibration calibration;
    calibration.calibratedOn = QDate::currentDate();
    calibration.unit = m_preferences.forceUnit();
    if (const Calibration* known = recordWith(m_session.calibrations(), record)) {
        calibration = *known;
    }
    offerTesters();
    m_tester->setCurrentIndex(record.isNull() ? 0 : m_tester->findData(calibration.tester.uuid()));
    m_tester->setEnabled(record.isNull());
    m_on->setDate(calibration.calibratedOn);
    m_by->setText(calibration.by);
    m_certificate->setText(calibration.certificate);
    m_isDue->setChecked(calibration.dueOn.isValid());
    m_due->setEnabled(calibration.dueOn.isValid());
    m_due->setDate(calibration.dueOn.isValid() ? calibration.dueOn
                                               : calibration.calibratedOn.addYears(kYear));
    {
        const QSignalBlocker quietUnit(m_unit);
        const QSignalBlocker quietDegree(m_degree);
        m_unit->setCurrentIndex(m_unit->findData(static_cast<int>(calibration.unit)));
        m_degree->setCurrentIndex(m_degree->findData(calibration.degree));
    }
    m_table->reset(static_cast<int>(calibration.points.size()) + 1, Columns);
    for (int line = 0; line < static_cast<int>(calibration.points.size()); ++line) {
        const CalibrationPoint& point = calibration.points[static_cast<std::size_t>(line)];
        m_table->setForce(line, Reference, point.reference);
        m_table->setForce(line, Indication, point.indication);
    }
    m_withdrawn->setChecked(calibration.withdrawn);
    m_withdrawn->setVisible(!record.isNull());
    showCurve();
}

ForceUnit CalibrationsPanel::unit() const {
    return static_cast<ForceUnit>(m_unit->currentData().toInt());
}

std::vector<CalibrationPoint> CalibrationsPanel::points() const {
    std::vector<CalibrationPoint> points;
    for (int line = 0; line < m_table->rowCount(); ++line) {
        const auto reference = m_table->force(line, Reference, unit());
        const auto indication = m_table->force(line, Indication, unit());
        if (reference && indication) {
            points.push_back({*reference, *indication});
        }
    }
    return points;
}

std::optional<int> CalibrationsPanel::faultyLine() const {
    for (int line = 0; line < m_table->rowCount(); ++line) {
        const bool blank = m_table->isBlank(line, Reference) && m_table->isBlank(line, Indication);
        const bool whole =
            m_table->force(line, Reference, unit()) && m_table->force(line, Indication, unit());
        if (!blank && !whole) {
            return line;
        }
    }
    return std::nullopt;
}

Calibration CalibrationsPanel::typed() const {
    Calibration calibration;
    calibration.tester = TesterId(m_tester->currentData().toUuid());
    calibration.calibratedOn = m_on->date();
    calibration.by = normalised(m_by->text());
    calibration.certificate = normalised(m_certificate->text());
    calibration.dueOn = m_isDue->isChecked() ? m_due->date() : QDate();
    calibration.degree = m_degree->currentData().toInt();
    calibration.unit = unit();
    calibration.points = points();
    calibration.withdrawn = m_withdrawn->isChecked();
    return calibration;
}

/// The curve through what is typed so far, and each line's distance from it.
void CalibrationsPanel::showCurve() {
    const Quantities quantities(unit());
    m_table->setHorizontalHeaderLabels({tr("Reference, %1").arg(quantities.unitName()),
                                        tr("Tester shows, %1").arg(quantities.unitName()),
                                        tr("Off the curve, %1").arg(quantities.unitName())});
    const Calibration calibration = typed();
    const CalibrationPicture picture = pictureOf(calibration);
    m_chart->show(picture, quantities);
    std::size_t point = 0;
    for (int line = 0; line < m_table->rowCount(); ++line) {
        const bool whole =
            m_table->force(line, Reference, unit()) && m_table->force(line, Indication, unit());
        const bool told = whole && !picture.curve.empty();
        m_table->showText(line, OffCurve,
                          told ? quantities.rate(picture.points[point].residual) : QString());
        point += whole ? 1 : 0;
    }
    m_result->setText(
        wording::calibrationSentences(calibration, picture, quantities).join(QLatin1Char('\n')));
}

std::optional<Change> CalibrationsPanel::read(const QUuid& record,
                                              const std::optional<Authorship>& author) {
    if (m_tester->currentIndex() < 0) {
        m_form->showFault(m_tester, tr("Note the tester first, under “Testers”."));
        return std::nullopt;
    }
    if (const std::optional<int> line = faultyLine()) {
        m_form->showFault(
            m_table,
            tr("Line %1 needs two forces, such as 120 and 121.5.").arg(QString::number(*line + 1)));
        return std::nullopt;
    }
    Calibration calibration = typed();
    calibration.id = CalibrationId(record);
    return author ? Change(AmendCalibration{calibration, *author})
                  : Change(AddCalibration{calibration});
}

QWidget* CalibrationsPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_on;
    case LogbookFault::CalibrationDueBefore:
        return m_due->parentWidget();
    case LogbookFault::CalibrationTooShort:
    case LogbookFault::CalibrationNotRising:
    case LogbookFault::ReadingOutOfBounds:
        return m_table;
    default:
        return nullptr;
    }
}

} // namespace coilbook
