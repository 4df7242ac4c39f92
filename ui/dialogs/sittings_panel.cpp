#include "ui/dialogs/sittings_panel.h"

#include "core/services/round_start.h"
#include "core/support/text.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"

#include <QComboBox>
#include <QLineEdit>
#include <QLocale>

#include <algorithm>

namespace coilbook {

namespace {

QString temperatureText(const std::optional<Temperature>& temperature) {
    return temperature
               ? QLocale().toString(temperature->inCelsius(), 'g', QLocale::FloatingPointShortest)
               : QString();
}

} // namespace

SittingsPanel::SittingsPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_tester(new QComboBox(m_form))
    , m_inspector(new QLineEdit(m_form))
    , m_temperature(new QLineEdit(m_form)) {
    m_tester->setObjectName(QStringLiteral("tester"));
    m_inspector->setObjectName(QStringLiteral("inspector"));
    m_temperature->setObjectName(QStringLiteral("temperature"));
    m_temperature->setPlaceholderText(tr("Not noted"));
    m_form->addField(tr("&Tester"), m_tester);
    m_form->addField(tr("&Inspected by"), m_inspector);
    m_form->addField(tr("Engine te&mperature, °C"), m_temperature);
    build({tr("Inspection"), tr("Races"), tr("Tester"), tr("By"), tr("Engine, °C")}, {},
          tr("No inspections yet. Start the first one at the bench."));
}

std::vector<RecordPanel::Line> SittingsPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    for (auto inspection = log->inspections.rbegin(); inspection != log->inspections.rend();
         ++inspection) {
        for (const Sitting& sitting : log->sittings) {
            if (sitting.inspection != inspection->id) {
                continue;
            }
            const Tester* tester = sitting.tester ? testerWith(*log, *sitting.tester) : nullptr;
            result.push_back({sitting.id.uuid(),
                              {inspection->inspectedOn.toString(Qt::ISODate),
                               QString::number(inspection->engineRaces),
                               tester != nullptr ? tester->name : QString(), sitting.inspector,
                               temperatureText(sitting.engineTemperature)}});
        }
    }
    return result;
}

Sitting SittingsPanel::sittingOf(const QUuid& record) const {
    const auto log = m_session.log();
    if (!log) {
        return {};
    }
    const auto found =
        std::find_if(log->sittings.begin(), log->sittings.end(),
                     [&](const Sitting& sitting) { return sitting.id.uuid() == record; });
    return found != log->sittings.end() ? *found : Sitting{};
}

void SittingsPanel::offerTesters(const std::optional<TesterId>& chosen) {
    m_tester->clear();
    m_tester->addItem(tr("Not noted"));
    for (const Tester& tester : m_session.testers()) {
        m_tester->addItem(tester.name, tester.id.uuid());
    }
    m_tester->setCurrentIndex(chosen ? std::max(m_tester->findData(chosen->uuid()), 0) : 0);
}

void SittingsPanel::fill(const QUuid& record) {
    const Sitting sitting = sittingOf(record);
    offerTesters(sitting.tester);
    m_inspector->setText(sitting.inspector);
    m_temperature->setText(temperatureText(sitting.engineTemperature));
}

std::optional<Change> SittingsPanel::read(const QUuid& record,
                                          const std::optional<Authorship>& author) {
    Sitting sitting = sittingOf(record);
    const QUuid tester = m_tester->currentData().toUuid();
    sitting.tester = tester.isNull() ? std::nullopt : std::optional(TesterId(tester));
    sitting.inspector = normalised(m_inspector->text());
    const QString temperature = m_temperature->text().trimmed();
    sitting.engineTemperature = temperatureFromText(temperature);
    if (!temperature.isEmpty() && !sitting.engineTemperature) {
        m_form->showFault(m_temperature,
                          tr("Give degrees Celsius from −40 to 250, or leave this empty."));
        return std::nullopt;
    }
    return Change(AmendSitting{sitting, author.value_or(Authorship{})});
}

QWidget* SittingsPanel::fieldAt(LogbookFault) const {
    return nullptr;
}

} // namespace coilbook
