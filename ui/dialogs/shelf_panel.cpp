#include "ui/dialogs/shelf_panel.h"

#include "core/domain/shelf.h"
#include "core/support/text.h"
#include "core/wording/wording.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/quantity_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;

const Spring* springIn(const EngineLog& log, const SpringId& id) {
    const auto found = std::find_if(log.springs.begin(), log.springs.end(),
                                    [&](const Spring& spring) { return spring.id == id; });
    return found == log.springs.end() ? nullptr : &*found;
}

} // namespace

ShelfPanel::ShelfPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_label(new QComboBox(m_form))
    , m_part(new QLineEdit(m_form))
    , m_batch(new QLineEdit(m_form))
    , m_to(new QComboBox(m_form))
    , m_shelvedOn(new DateField(m_form))
    , m_pressure(new QuantityField(preferences.forceUnit(), m_form))
    , m_height(new QLineEdit(m_form))
    , m_races(new WholeNumberField(0, kMostRaces, m_form))
    , m_reason(new QLineEdit(m_form))
    , m_withdrawn(new QCheckBox(tr("&Taken back: it does not count"), m_form)) {
    m_label->setObjectName(QStringLiteral("label"));
    m_part->setObjectName(QStringLiteral("part"));
    m_batch->setObjectName(QStringLiteral("batch"));
    m_to->setObjectName(QStringLiteral("to"));
    m_shelvedOn->setObjectName(QStringLiteral("shelvedOn"));
    m_pressure->setObjectName(QStringLiteral("pressure"));
    m_height->setObjectName(QStringLiteral("height"));
    m_races->setObjectName(QStringLiteral("races"));
    m_reason->setObjectName(QStringLiteral("reason"));
    m_withdrawn->setObjectName(QStringLiteral("withdrawn"));
    m_label->setEditable(true);
    m_label->setInsertPolicy(QComboBox::NoInsert);
    m_to->addItem(tr("the shelf"));
    m_to->addItem(tr("scrap"));
    m_form->addField(tr("S&pring"), m_label);
    m_form->addField(tr("P&art"), m_part);
    m_form->addField(tr("&Batch"), m_batch);
    m_form->addField(tr("&Goes to"), m_to);
    m_form->addField(tr("&Date"), m_shelvedOn);
    m_form->addField(tr("Pr&essure (may stay empty)"), m_pressure);
    m_form->addField(tr("At &height, in (may stay empty)"), m_height);
    m_form->addField(tr("Races run else&where"), m_races);
    m_form->addField(tr("&Why"), m_reason);
    m_form->addField(QString(), m_withdrawn);
    build({tr("Date"), tr("Spring"), tr("Goes to"), tr("Why")}, tr("&New spare"),
          tr("Nothing was put on the shelf yet. Enter the spares that lie ready for this engine."));
}

void ShelfPanel::selectSpring(const SpringId& spring) {
    const auto log = m_session.log();
    if (!log) {
        return;
    }
    if (const Shelving* shelving = shelvingInForce(*log, spring)) {
        select(shelving->id.uuid());
        return;
    }
    startNew();
    if (const Spring* known = springIn(*log, spring)) {
        m_label->setCurrentText(known->label);
    }
}

std::vector<RecordPanel::Line> ShelfPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    if (!log) {
        return result;
    }
    for (auto shelving = log->shelvings.rbegin(); shelving != log->shelvings.rend(); ++shelving) {
        const Spring* spring = springIn(*log, shelving->spring);
        const QString to = shelving->to == Storage::Scrap ? tr("scrap") : tr("the shelf");
        result.push_back({shelving->id.uuid(),
                          {shelving->shelvedOn.toString(Qt::ISODate),
                           spring != nullptr ? spring->label : QString(),
                           shelving->withdrawn ? tr("taken back") : to, shelving->reason}});
    }
    return result;
}

Shelving ShelfPanel::shelvingOf(const QUuid& record) const {
    Shelving fresh;
    fresh.shelvedOn = QDate::currentDate();
    const auto log = m_session.log();
    if (!log) {
        return fresh;
    }
    const auto found =
        std::find_if(log->shelvings.begin(), log->shelvings.end(),
                     [&](const Shelving& shelving) { return shelving.id.uuid() == record; });
    if (found != log->shelvings.end()) {
        return *found;
    }
    fresh.engine = log->engine.id;
    return fresh;
}

void ShelfPanel::fill(const QUuid& record) {
    const Shelving shelving = shelvingOf(record);
    const auto log = m_session.log();
    const auto history = m_session.history();
    const Spring* spring = log ? springIn(*log, shelving.spring) : nullptr;
    m_label->clear();
    if (log && history) {
        for (const ShelvedSpring& shelved : shelfOf(*log, *history)) {
            m_label->addItem(shelved.spring.label);
        }
    }
    // An entry is about the spring that it was made for.
    m_label->setEnabled(record.isNull());
    m_part->setEnabled(record.isNull());
    m_batch->setEnabled(record.isNull());
    m_label->setCurrentText(spring != nullptr ? spring->label : QString());
    m_part->setText(spring != nullptr ? spring->part : QString());
    m_batch->setText(spring != nullptr ? spring->batch : QString());
    m_to->setCurrentIndex(shelving.to == Storage::Scrap ? 1 : 0);
    m_shelvedOn->setDate(shelving.shelvedOn);
    m_pressure->setTyped(shelving.pressure);
    m_height->setText(shelving.height ? QString::number(shelving.height->inInches(), 'f', 3)
                                      : QString());
    m_races->setValue(shelving.racesBefore);
    m_reason->setText(shelving.reason);
    m_withdrawn->setChecked(shelving.withdrawn);
    m_withdrawn->setVisible(!record.isNull());
}

bool ShelfPanel::readHeight(Shelving& shelving) {
    const QString typed = m_height->text().trimmed().replace(QLatin1Char(','), QLatin1Char('.'));
    shelving.height.reset();
    if (typed.isEmpty()) {
        return true;
    }
    bool isNumber = false;
    const double inches = typed.toDouble(&isNumber);
    if (!isNumber || !(inches > 0.0 && inches < 100.0)) {
        m_form->showFault(m_height, tr("Give the height in inches, such as 1.900, or none."));
        return false;
    }
    shelving.height = Length::inches(inches);
    return true;
}

std::optional<Change> ShelfPanel::read(const QUuid& record,
                                       const std::optional<Authorship>& author) {
    const auto log = m_session.log();
    const QString label = normalised(m_label->currentText());
    if (!log || label.isEmpty()) {
        m_form->showFault(
            m_label,
            wording::sentence(fail(LogbookFault::EmptyName, {QStringLiteral("spring")}).value()));
        return std::nullopt;
    }
    Shelving shelving = shelvingOf(record);
    if (m_pressure->isFault() || m_races->isFault()) {
        m_form->showFault(m_pressure->isFault() ? static_cast<QWidget*>(m_pressure) : m_races,
                          tr("That is no number that can stand here. Type it again, or leave the "
                             "field empty."));
        return std::nullopt;
    }
    if (!readHeight(shelving)) {
        return std::nullopt;
    }
    shelving.id = ShelvingId(record);
    shelving.to = m_to->currentIndex() == 1 ? Storage::Scrap : Storage::Shelf;
    shelving.shelvedOn = m_shelvedOn->date();
    shelving.pressure = m_pressure->typed();
    shelving.racesBefore = m_races->value();
    shelving.reason = normalised(m_reason->text());
    shelving.withdrawn = m_withdrawn->isChecked();
    if (author) {
        return Change(AmendShelving{shelving, *author});
    }
    const auto known = std::find_if(log->springs.begin(), log->springs.end(),
                                    [&](const Spring& spring) { return spring.label == label; });
    ShelveSpring change{shelving, std::nullopt};
    if (known == log->springs.end()) {
        change.newSpring = Spring{SpringId::make(), label, normalised(m_part->text()),
                                  normalised(m_batch->text()), QString()};
        change.shelving.spring = change.newSpring->id;
        return Change(change);
    }
    for (const HistoryLife& life : m_session.history()->lives) {
        if (life.spring == known->id && life.fitted) {
            m_form->showFault(
                m_label,
                wording::sentence(
                    fail(LogbookFault::NotInAnyPlace, {label, placeText(life.place)}).value()));
            return std::nullopt;
        }
    }
    change.shelving.spring = known->id;
    return Change(change);
}

QWidget* ShelfPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::EmptyName:
    case LogbookFault::NameTaken:
    case LogbookFault::NameDiffersInCaseOnly:
        return m_label;
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_shelvedOn;
    case LogbookFault::ReadingOutOfBounds:
        return m_pressure;
    case LogbookFault::BadHeight:
        return m_height;
    default:
        return nullptr;
    }
}

} // namespace coilbook
