#include "ui/dialogs/inspections_panel.h"

#include "core/domain/current_readings.h"
#include "core/services/round_start.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/whole_number_field.h"

#include <set>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;

} // namespace

InspectionsPanel::InspectionsPanel(LogbookSession& session, Preferences& preferences,
                                   QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_inspectedOn(new DateField(m_form))
    , m_races(new WholeNumberField(0, kMostRaces, m_form)) {
    m_inspectedOn->setObjectName(QStringLiteral("inspectedOn"));
    m_races->setObjectName(QStringLiteral("engineRaces"));
    m_form->addField(tr("&Date"), m_inspectedOn);
    m_form->addField(tr("&Races run by then"), m_races);
    build({tr("Date"), tr("Races"), tr("Springs read"), QString()}, {},
          tr("No inspections yet. Start the first one at the bench."));
}

std::vector<RecordPanel::Line> InspectionsPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    std::vector<std::set<SpringId>> read(log->inspections.size());
    for (const CurrentHit& hit : currentHits(*log)) {
        read[hit.inspection].insert(log->readings[hit.row].spring);
    }
    for (std::size_t i = log->inspections.size(); i-- > 0;) {
        const Inspection& inspection = log->inspections[i];
        result.push_back({inspection.id.uuid(),
                          {inspection.inspectedOn.toString(Qt::ISODate),
                           QString::number(inspection.engineRaces), QString::number(read[i].size()),
                           inspection.closed ? QString() : tr("not finished")}});
    }
    return result;
}

Inspection InspectionsPanel::inspectionOf(const QUuid& record) const {
    const auto log = m_session.log();
    if (!log) {
        return {};
    }
    const Inspection* found = inspectionWith(*log, InspectionId(record));
    return found != nullptr ? *found : Inspection{};
}

void InspectionsPanel::fill(const QUuid& record) {
    const Inspection inspection = inspectionOf(record);
    m_inspectedOn->setDate(inspection.inspectedOn);
    m_races->setValue(inspection.engineRaces);
}

std::optional<Change> InspectionsPanel::read(const QUuid& record,
                                             const std::optional<Authorship>& author) {
    const std::optional<int> races = m_races->value();
    if (!races) {
        m_form->showFault(m_races, tr("Give the races run by then as a whole number, 0 or more."));
        return std::nullopt;
    }
    Inspection inspection = inspectionOf(record);
    inspection.inspectedOn = m_inspectedOn->date();
    inspection.engineRaces = *races;
    return Change(AmendInspection{inspection, author.value_or(Authorship{})});
}

QWidget* InspectionsPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::RacesGoBack:
        return m_races;
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
    case LogbookFault::InspectionExists:
    case LogbookFault::RaceAfterInspection:
        return m_inspectedOn;
    default:
        return nullptr;
    }
}

} // namespace coilbook
