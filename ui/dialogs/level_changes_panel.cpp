#include "ui/dialogs/level_changes_panel.h"

#include "core/support/text.h"
#include "core/wording/say_words.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;

} // namespace

LevelChangesPanel::LevelChangesPanel(LogbookSession& session, Preferences& preferences,
                                     QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_spring(new QComboBox(m_form))
    , m_kind(new QComboBox(m_form))
    , m_changedOn(new DateField(m_form))
    , m_engineRaces(new WholeNumberField(0, kMostRaces, m_form))
    , m_note(new QLineEdit(m_form))
    , m_withdrawn(new QCheckBox(tr("&Taken back: it does not count"), m_form)) {
    m_spring->setObjectName(QStringLiteral("spring"));
    m_kind->setObjectName(QStringLiteral("kind"));
    m_changedOn->setObjectName(QStringLiteral("changedOn"));
    m_engineRaces->setObjectName(QStringLiteral("engineRaces"));
    m_note->setObjectName(QStringLiteral("note"));
    m_withdrawn->setObjectName(QStringLiteral("withdrawn"));
    for (const LevelChangeKind kind :
         {LevelChangeKind::Shim, LevelChangeKind::ValveSeatWork, LevelChangeKind::Retainer,
          LevelChangeKind::Move, LevelChangeKind::Other}) {
        m_kind->addItem(wording::levelChangeKind(kind), static_cast<int>(kind));
    }
    m_form->addField(tr("&Spring"), m_spring);
    m_form->addField(tr("&What was done"), m_kind);
    m_form->addField(tr("&Date"), m_changedOn);
    m_form->addField(tr("After &races"), m_engineRaces);
    m_form->addField(tr("&Note"), m_note);
    m_form->addField(QString(), m_withdrawn);
    build({tr("Date"), tr("Spring"), tr("What was done"), tr("After races")}, tr("&New work"),
          tr("No such work yet. Shims, valve-seat work, another retainer or a move change what a "
             "spring reads without wearing it; noted here, that is not taken for a loss."));
}

std::vector<RecordPanel::Line> LevelChangesPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    for (auto change = log->levelChanges.rbegin(); change != log->levelChanges.rend(); ++change) {
        const auto spring =
            std::find_if(log->springs.begin(), log->springs.end(),
                         [&](const Spring& known) { return known.id == change->spring; });
        result.push_back(
            {change->id.uuid(),
             {change->changedOn.toString(Qt::ISODate),
              spring == log->springs.end() ? QString() : spring->label,
              change->withdrawn ? tr("taken back") : wording::levelChangeKind(change->kind),
              QString::number(change->engineRaces)}});
    }
    return result;
}

LevelChange LevelChangesPanel::changeOf(const QUuid& record) const {
    LevelChange fresh;
    fresh.changedOn = QDate::currentDate();
    const auto log = m_session.log();
    if (!log) {
        return fresh;
    }
    const auto found =
        std::find_if(log->levelChanges.begin(), log->levelChanges.end(),
                     [&](const LevelChange& change) { return change.id.uuid() == record; });
    if (found != log->levelChanges.end()) {
        return *found;
    }
    fresh.engine = log->engine.id;
    if (const auto history = m_session.history()) {
        fresh.engineRaces = history->racesNow;
    }
    return fresh;
}

/// The springs of the engine, those that stand in it first.
void LevelChangesPanel::offerSprings() {
    m_spring->clear();
    const auto log = m_session.log();
    const auto history = m_session.history();
    if (!log || !history) {
        return;
    }
    for (const std::size_t life : fittedLives(*history)) {
        const HistoryLife& fitted = history->lives[life];
        m_spring->addItem(
            tr("%1, %2", "a place, a spring").arg(placeText(fitted.place), fitted.label),
            fitted.spring.uuid());
    }
    for (const Spring& spring : log->springs) {
        if (m_spring->findData(spring.id.uuid()) < 0) {
            m_spring->addItem(tr("%1, taken out", "a spring").arg(spring.label), spring.id.uuid());
        }
    }
}

void LevelChangesPanel::fill(const QUuid& record) {
    const LevelChange change = changeOf(record);
    offerSprings();
    m_spring->setCurrentIndex(record.isNull() ? 0 : m_spring->findData(change.spring.uuid()));
    m_kind->setCurrentIndex(m_kind->findData(static_cast<int>(change.kind)));
    m_changedOn->setDate(change.changedOn);
    m_engineRaces->setValue(change.engineRaces);
    m_note->setText(change.note);
    m_withdrawn->setChecked(change.withdrawn);
    m_withdrawn->setVisible(!record.isNull());
}

std::optional<Change> LevelChangesPanel::read(const QUuid& record,
                                              const std::optional<Authorship>& author) {
    if (m_spring->currentIndex() < 0) {
        m_form->showFault(m_spring, tr("Choose the spring that was worked at."));
        return std::nullopt;
    }
    if (m_engineRaces->isFault() || m_engineRaces->isBlank()) {
        m_form->showFault(m_engineRaces, tr("Give how many races the engine had run by then."));
        return std::nullopt;
    }
    LevelChange change = changeOf(record);
    change.id = LevelChangeId(record);
    change.spring = SpringId(m_spring->currentData().toUuid());
    change.kind = static_cast<LevelChangeKind>(m_kind->currentData().toInt());
    change.changedOn = m_changedOn->date();
    change.engineRaces = *m_engineRaces->value();
    change.note = normalised(m_note->text());
    change.withdrawn = m_withdrawn->isChecked();
    return author ? Change(AmendLevelChange{change, *author}) : Change(AddLevelChange{change});
}

QWidget* LevelChangesPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::RacesGoBack:
        return m_engineRaces;
    case LogbookFault::UnknownPlaceOfSpring:
        return m_spring;
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_changedOn;
    default:
        return nullptr;
    }
}

} // namespace coilbook
