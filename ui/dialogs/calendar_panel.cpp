#include "ui/dialogs/calendar_panel.h"

#include "core/support/text.h"
#include "ui/dialogs/fault_form.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QCheckBox>
#include <QLineEdit>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kMostLaps = 9999;
constexpr int kYearsAhead = 5;

} // namespace

CalendarPanel::CalendarPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_plannedOn(new DateField(m_form))
    , m_venue(new QLineEdit(m_form))
    , m_laps(new WholeNumberField(1, kMostLaps, m_form))
    , m_note(new QLineEdit(m_form))
    , m_withdrawn(new QCheckBox(tr("&Struck from the calendar"), m_form)) {
    m_plannedOn->setObjectName(QStringLiteral("plannedOn"));
    m_venue->setObjectName(QStringLiteral("venue"));
    m_laps->setObjectName(QStringLiteral("laps"));
    m_note->setObjectName(QStringLiteral("note"));
    m_withdrawn->setObjectName(QStringLiteral("withdrawn"));
    m_plannedOn->setMaximumDate(QDate::currentDate().addYears(kYearsAhead));
    m_form->addField(tr("&Date"), m_plannedOn);
    m_form->addField(tr("&Venue"), m_venue);
    m_form->addField(tr("&Laps (may stay empty)"), m_laps);
    m_form->addField(tr("&Note"), m_note);
    m_form->addField(QString(), m_withdrawn);
    build({tr("Date"), tr("Venue"), tr("Laps")}, tr("&New planned race"),
          tr("No race is planned. Enter the coming races, and the swap plan says what to change "
             "before which of them."));
}

std::vector<RecordPanel::Line> CalendarPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    for (const PlannedRace& race : log->plannedRaces) {
        const QString laps = race.laps ? QString::number(*race.laps) : QString();
        result.push_back({race.id.uuid(),
                          {race.plannedOn.toString(Qt::ISODate), race.venue,
                           race.withdrawn ? tr("struck") : laps}});
    }
    return result;
}

PlannedRace CalendarPanel::raceOf(const QUuid& record) const {
    constexpr int kDaysOn = 7;
    PlannedRace fresh;
    fresh.plannedOn = QDate::currentDate();
    const auto log = m_session.log();
    if (!log) {
        return fresh;
    }
    for (const PlannedRace& race : log->plannedRaces) {
        if (race.id.uuid() == record) {
            return race;
        }
        fresh.plannedOn = std::max(fresh.plannedOn, race.plannedOn.addDays(kDaysOn));
    }
    fresh.engine = log->engine.id;
    return fresh;
}

void CalendarPanel::fill(const QUuid& record) {
    const PlannedRace race = raceOf(record);
    m_plannedOn->setDate(race.plannedOn);
    m_venue->setText(race.venue);
    m_laps->setValue(race.laps);
    m_note->setText(race.note);
    m_withdrawn->setChecked(race.withdrawn);
    m_withdrawn->setVisible(!record.isNull());
}

std::optional<Change> CalendarPanel::read(const QUuid& record,
                                          const std::optional<Authorship>& author) {
    if (m_laps->isFault()) {
        m_form->showFault(
            m_laps, tr("Give the laps as a whole number from 1 to %1, or none.").arg(kMostLaps));
        return std::nullopt;
    }
    PlannedRace race = raceOf(record);
    race.id = PlannedRaceId(record);
    race.plannedOn = m_plannedOn->date();
    race.venue = normalised(m_venue->text());
    race.laps = m_laps->value();
    race.note = normalised(m_note->text());
    race.withdrawn = m_withdrawn->isChecked();
    return author ? Change(AmendPlannedRace{race, *author}) : Change(AddPlannedRace{race});
}

QWidget* CalendarPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::BadLaps:
        return m_laps;
    case LogbookFault::DateTooEarly:
        return m_plannedOn;
    default:
        return nullptr;
    }
}

} // namespace coilbook
