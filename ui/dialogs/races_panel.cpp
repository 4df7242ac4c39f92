#include "ui/dialogs/races_panel.h"

#include "core/support/text.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QComboBox>
#include <QLineEdit>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;
constexpr int kMostLaps = 9999;
constexpr int kMostRpm = 30000;

QString numberText(const std::optional<int>& number) {
    return number ? QString::number(*number) : QString();
}

} // namespace

RacesPanel::RacesPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_number(new WholeNumberField(1, kMostRaces, m_form))
    , m_racedOn(new DateField(m_form))
    , m_venue(new QLineEdit(m_form))
    , m_laps(new WholeNumberField(0, kMostLaps, m_form))
    , m_peakRpm(new WholeNumberField(0, kMostRpm, m_form))
    , m_overRev(new QComboBox(m_form))
    , m_note(new QLineEdit(m_form)) {
    m_number->setObjectName(QStringLiteral("number"));
    m_racedOn->setObjectName(QStringLiteral("racedOn"));
    m_venue->setObjectName(QStringLiteral("venue"));
    m_laps->setObjectName(QStringLiteral("laps"));
    m_peakRpm->setObjectName(QStringLiteral("peakRpm"));
    m_overRev->addItem(tr("Go by the peak rpm"));
    m_overRev->addItem(tr("Yes"), true);
    m_overRev->addItem(tr("No"), false);
    m_form->addField(tr("&Race number"), m_number);
    m_form->addField(tr("&Date"), m_racedOn);
    m_form->addField(tr("&Venue"), m_venue);
    m_form->addField(tr("&Laps"), m_laps);
    m_form->addField(tr("&Peak rpm"), m_peakRpm);
    m_form->addField(tr("&Over-revved"), m_overRev);
    m_form->addField(tr("&Note"), m_note);
    build({tr("Race"), tr("Date"), tr("Venue"), tr("Laps"), tr("Peak rpm"), tr("Over-rev")},
          tr("&New race"),
          tr("No races yet. Coilbook counts races at the inspections as well; noting a race here "
             "adds its date and shows an over-rev in the charts."));
}

std::vector<RecordPanel::Line> RacesPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    for (auto race = log->races.rbegin(); race != log->races.rend(); ++race) {
        const bool overRev = isOverRev(*race, log->engine.rpmCeiling);
        result.push_back(
            {race->id.uuid(),
             {QString::number(race->number), race->racedOn.toString(Qt::ISODate), race->venue,
              numberText(race->laps), numberText(race->peakRpm), overRev ? tr("yes") : QString()}});
    }
    return result;
}

Race RacesPanel::raceOf(const QUuid& record) const {
    Race fresh;
    fresh.racedOn = QDate::currentDate();
    const auto log = m_session.log();
    if (!log) {
        return fresh;
    }
    const auto found = std::find_if(log->races.begin(), log->races.end(),
                                    [&](const Race& race) { return race.id.uuid() == record; });
    if (found != log->races.end()) {
        return *found;
    }
    fresh.engine = log->engine.id;
    fresh.number = log->races.empty() ? 1 : log->races.back().number + 1;
    return fresh;
}

void RacesPanel::fill(const QUuid& record) {
    const Race race = raceOf(record);
    m_number->setValue(race.number);
    m_racedOn->setDate(race.racedOn);
    m_venue->setText(race.venue);
    m_laps->setValue(race.laps);
    m_peakRpm->setValue(race.peakRpm);
    m_overRev->setCurrentIndex(race.overRev ? m_overRev->findData(*race.overRev) : 0);
    m_note->setText(race.note);
}

bool RacesPanel::accept(WholeNumberField* field, bool needed) {
    if (!field->isFault() && !(needed && field->isBlank())) {
        return true;
    }
    const QString bounds =
        tr("Give a whole number from %1 to %2.")
            .arg(QString::number(field->least()), QString::number(field->most()));
    m_form->showFault(field, bounds);
    return false;
}

std::optional<Change> RacesPanel::read(const QUuid& record,
                                       const std::optional<Authorship>& author) {
    if (!accept(m_number, true) || !accept(m_laps, false) || !accept(m_peakRpm, false)) {
        return std::nullopt;
    }
    Race race = raceOf(record);
    race.id = RaceId(record);
    race.number = *m_number->value();
    race.racedOn = m_racedOn->date();
    race.venue = normalised(m_venue->text());
    race.laps = m_laps->value();
    race.peakRpm = m_peakRpm->value();
    const QVariant stated = m_overRev->currentData();
    race.overRev = stated.isValid() ? std::optional(stated.toBool()) : std::nullopt;
    race.note = normalised(m_note->text());
    return author ? Change(AmendRace{race, *author}) : Change(AddRace{race});
}

QWidget* RacesPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::RaceExists:
        return m_number;
    case LogbookFault::RaceAfterInspection:
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_racedOn;
    default:
        return nullptr;
    }
}

} // namespace coilbook
