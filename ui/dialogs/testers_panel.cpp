#include "ui/dialogs/testers_panel.h"

#include "core/support/text.h"
#include "core/wording/wording.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/quantity_field.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLineEdit>

#include <algorithm>

namespace coilbook {

namespace {

/// As it was written down, with its unit.
QString typedText(const std::optional<TypedForce>& force) {
    return force ? QStringLiteral("%1 %2").arg(force->text(), Quantities(force->unit()).unitName())
                 : QString();
}

} // namespace

TestersPanel::TestersPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_name(new QLineEdit(m_form))
    , m_range(new QuantityField(preferences.forceUnit(), m_form))
    , m_graduation(new QuantityField(preferences.forceUnit(), m_form))
    , m_calibrated(new QCheckBox(tr("&Known, on"), m_form))
    , m_calibratedOn(new DateField(m_form))
    , m_note(new QLineEdit(m_form)) {
    m_name->setObjectName(QStringLiteral("name"));
    m_range->setObjectName(QStringLiteral("range"));
    m_graduation->setObjectName(QStringLiteral("graduation"));
    m_calibrated->setObjectName(QStringLiteral("calibrated"));
    m_calibratedOn->setObjectName(QStringLiteral("calibratedOn"));
    m_calibratedOn->setAccessibleName(tr("Calibrated on"));
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
    m_form->addField(tr("Calibration"), calibration);
    m_form->addField(tr("No&te"), m_note);
    build({tr("Tester"), tr("Range"), tr("Division"), tr("Calibrated")}, tr("New t&ester"),
          tr("No testers yet. Note each one that the shop uses: a tester with a small range reads "
             "truer than one with a large range, and the sheet names the one that was used."));
}

std::vector<RecordPanel::Line> TestersPanel::lines() const {
    std::vector<Line> result;
    for (const Tester& tester : m_session.testers()) {
        result.push_back({tester.id.uuid(),
                          {tester.name, typedText(tester.range), typedText(tester.graduation),
                           tester.calibratedOn.toString(Qt::ISODate)}});
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
    Tester tester;
    tester.id = TesterId(record);
    tester.name = normalised(m_name->text());
    if (tester.name.isEmpty()) {
        m_form->showFault(
            m_name,
            wording::sentence(fail(LogbookFault::EmptyName, {QStringLiteral("tester")}).value()));
        return std::nullopt;
    }
    if (!accept(m_range) || !accept(m_graduation)) {
        return std::nullopt;
    }
    tester.range = m_range->typed();
    tester.graduation = m_graduation->typed();
    tester.calibratedOn = m_calibrated->isChecked() ? m_calibratedOn->date() : QDate();
    tester.note = normalised(m_note->text());
    return author ? Change(AmendTester{tester, *author}) : Change(AddTester{tester});
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
