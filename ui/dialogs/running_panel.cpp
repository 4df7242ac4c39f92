#include "ui/dialogs/running_panel.h"

#include "core/support/text.h"
#include "core/wording/wording.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLineEdit>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;
constexpr int kMostLaps = 9999;
constexpr double kThousandths = 1000.0;
constexpr double kMostParts = 10.0; ///< ten races' worth

enum Measure { InLaps, AsPartOfARace };

QString amountOf(const Running& running) {
    if (running.laps) {
        return *running.laps == 1 ? RunningPanel::tr("1 lap")
                                  : RunningPanel::tr("%1 laps").arg(QString::number(*running.laps));
    }
    return RunningPanel::tr("%1 of a race")
        .arg(QString::number(running.raceThousandths.value_or(0) / kThousandths));
}

} // namespace

RunningPanel::RunningPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_ranOn(new DateField(m_form))
    , m_engineRaces(new WholeNumberField(0, kMostRaces, m_form))
    , m_measure(new QComboBox(m_form))
    , m_laps(new WholeNumberField(1, kMostLaps, m_form))
    , m_part(new QDoubleSpinBox(m_form))
    , m_note(new QLineEdit(m_form))
    , m_withdrawn(new QCheckBox(tr("&Taken back: it does not count"), m_form)) {
    m_ranOn->setObjectName(QStringLiteral("ranOn"));
    m_engineRaces->setObjectName(QStringLiteral("engineRaces"));
    m_measure->setObjectName(QStringLiteral("measure"));
    m_laps->setObjectName(QStringLiteral("laps"));
    m_part->setObjectName(QStringLiteral("part"));
    m_note->setObjectName(QStringLiteral("note"));
    m_withdrawn->setObjectName(QStringLiteral("withdrawn"));
    m_measure->addItem(tr("in laps"));
    m_measure->addItem(tr("as a part of a race"));
    m_part->setDecimals(3);
    m_part->setRange(1.0 / kThousandths, kMostParts);
    m_part->setSingleStep(0.25);
    m_form->addField(tr("&Date"), m_ranOn);
    m_form->addField(tr("After &races"), m_engineRaces);
    m_form->addField(tr("&How much"), m_measure);
    m_form->addField(tr("&Laps"), m_laps);
    m_form->addField(tr("&Part of a race"), m_part);
    m_form->addField(tr("&Note"), m_note);
    m_form->addField(QString(), m_withdrawn);
    connect(m_measure, &QComboBox::currentIndexChanged, this, &RunningPanel::offerAmount);
    build({tr("Date"), tr("After races"), tr("How much"), tr("Note")}, tr("&New running"),
          tr("Nothing but races so far. Note test days and dyno pulls here, so that the springs' "
             "wear is laid at the door of all the running that they did."));
}

std::vector<RecordPanel::Line> RunningPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    for (auto running = log->running.rbegin(); running != log->running.rend(); ++running) {
        result.push_back(
            {running->id.uuid(),
             {running->ranOn.toString(Qt::ISODate), QString::number(running->engineRaces),
              running->withdrawn ? tr("taken back") : amountOf(*running), running->note}});
    }
    return result;
}

Running RunningPanel::runningOf(const QUuid& record) const {
    Running fresh;
    fresh.ranOn = QDate::currentDate();
    fresh.laps = 1;
    const auto log = m_session.log();
    if (!log) {
        return fresh;
    }
    const auto found =
        std::find_if(log->running.begin(), log->running.end(),
                     [&](const Running& running) { return running.id.uuid() == record; });
    if (found != log->running.end()) {
        return *found;
    }
    fresh.engine = log->engine.id;
    if (const auto history = m_session.history()) {
        fresh.engineRaces = history->racesNow;
    }
    return fresh;
}

void RunningPanel::fill(const QUuid& record) {
    const Running running = runningOf(record);
    m_ranOn->setDate(running.ranOn);
    m_engineRaces->setValue(running.engineRaces);
    m_measure->setCurrentIndex(running.raceThousandths ? AsPartOfARace : InLaps);
    m_laps->setValue(record.isNull() ? std::nullopt : running.laps);
    m_part->setValue(running.raceThousandths.value_or(static_cast<int>(kThousandths)) /
                     kThousandths);
    m_note->setText(running.note);
    m_withdrawn->setChecked(running.withdrawn);
    m_withdrawn->setVisible(!record.isNull());
    offerAmount();
}

void RunningPanel::offerAmount() {
    m_laps->setEnabled(m_measure->currentIndex() == InLaps);
    m_part->setEnabled(m_measure->currentIndex() == AsPartOfARace);
}

std::optional<Change> RunningPanel::read(const QUuid& record,
                                         const std::optional<Authorship>& author) {
    if (m_engineRaces->isFault() || m_engineRaces->isBlank()) {
        m_form->showFault(m_engineRaces, tr("Give how many races the engine had run by then."));
        return std::nullopt;
    }
    Running running = runningOf(record);
    running.id = RunningId(record);
    running.ranOn = m_ranOn->date();
    running.engineRaces = *m_engineRaces->value();
    running.laps.reset();
    running.raceThousandths.reset();
    if (m_measure->currentIndex() == AsPartOfARace) {
        running.raceThousandths = static_cast<int>(std::lround(m_part->value() * kThousandths));
    } else if (m_laps->isFault() || m_laps->isBlank()) {
        m_form->showFault(m_laps, wording::sentence(fail(LogbookFault::RunningUnclear).value()));
        return std::nullopt;
    } else {
        running.laps = m_laps->value();
    }
    running.note = normalised(m_note->text());
    running.withdrawn = m_withdrawn->isChecked();
    return author ? Change(AmendRunning{running, *author}) : Change(AddRunning{running});
}

QWidget* RunningPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::RacesGoBack:
        return m_engineRaces;
    case LogbookFault::RunningUnclear:
        return m_measure;
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_ranOn;
    default:
        return nullptr;
    }
}

} // namespace coilbook
