#include "ui/dialogs/studies_panel.h"

#include "core/support/text.h"
#include "core/testers/study_result.h"
#include "core/wording/tester_words.h"
#include "ui/dialogs/fault_form.h"
#include "ui/dialogs/record_lookup.h"
#include "ui/preferences.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/force_table.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kMostHits = 10;
constexpr int kUsualHits = 3;
constexpr int kUsualSprings = 5;

/// Names parted by commas or semicolons.
QStringList namesIn(const QString& text) {
    QStringList names;
    QString parted = text;
    for (const QString& name :
         parted.replace(QLatin1Char(';'), QLatin1Char(',')).split(QLatin1Char(','))) {
        const QString clean = normalised(name);
        if (!clean.isEmpty()) {
            names << clean;
        }
    }
    return names;
}

QString joined(const QStringList& names) {
    return names.join(QStringLiteral(", "));
}

} // namespace

StudiesPanel::StudiesPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_tester(new QComboBox(m_form))
    , m_on(new DateField(m_form))
    , m_springs(new QLineEdit(m_form))
    , m_persons(new QLineEdit(m_form))
    , m_hits(new QSpinBox(m_form))
    , m_unit(new QComboBox(m_form))
    , m_table(new ForceTable(m_form))
    , m_result(new QLabel(m_form))
    , m_note(new QLineEdit(m_form))
    , m_withdrawn(new QCheckBox(tr("Ta&ken back: it does not count"), m_form)) {
    addFields();
    build({tr("Tester"), tr("Date"), tr("Springs, persons, hits")}, tr("New st&udy"),
          tr("No studies yet. Take five to ten springs that differ, two or three persons and three "
             "hits each: then you know how much of a difference is the tester, how much the hand, "
             "and how much the spring."));
}

void StudiesPanel::addFields() {
    m_tester->setObjectName(QStringLiteral("tester"));
    m_on->setObjectName(QStringLiteral("studiedOn"));
    m_springs->setObjectName(QStringLiteral("springs"));
    m_persons->setObjectName(QStringLiteral("persons"));
    m_hits->setObjectName(QStringLiteral("hits"));
    m_unit->setObjectName(QStringLiteral("unit"));
    m_table->setObjectName(QStringLiteral("readings"));
    m_result->setObjectName(QStringLiteral("result"));
    m_note->setObjectName(QStringLiteral("note"));
    m_withdrawn->setObjectName(QStringLiteral("withdrawn"));
    m_hits->setRange(2, kMostHits);
    for (const ForceUnit unit : {ForceUnit::PoundForce, ForceUnit::Newton}) {
        m_unit->addItem(Quantities(unit).unitName(), static_cast<int>(unit));
    }
    m_springs->setPlaceholderText(tr("S-01, S-02, S-03"));
    m_persons->setPlaceholderText(tr("Kim, Alex"));
    m_table->setMinimumHeight(fontMetrics().lineSpacing() * 9);
    m_result->setTextFormat(Qt::PlainText);
    m_result->setWordWrap(true);
    m_result->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::MinimumExpanding);
    m_form->addField(tr("&Tester"), m_tester);
    m_form->addField(tr("&Date"), m_on);
    m_form->addField(tr("&Springs, with commas"), m_springs);
    m_form->addField(tr("&Persons, with commas"), m_persons);
    m_form->addField(tr("&Hits of each on each"), m_hits);
    m_form->addField(tr("&Unit"), m_unit);
    m_form->addField(tr("&Readings, spring by spring"), m_table);
    m_form->addField(tr("What it says"), m_result);
    m_form->addField(tr("N&ote"), m_note);
    m_form->addField(QString(), m_withdrawn);
    connect(m_springs, &QLineEdit::textEdited, this, &StudiesPanel::shapeTable);
    connect(m_persons, &QLineEdit::textEdited, this, &StudiesPanel::shapeTable);
    connect(m_hits, &QSpinBox::valueChanged, this, &StudiesPanel::shapeTable);
    connect(m_unit, &QComboBox::currentIndexChanged, this, &StudiesPanel::showResult);
    connect(m_table, &ForceTable::typed, this, &StudiesPanel::showResult);
}

std::vector<RecordPanel::Line> StudiesPanel::lines() const {
    std::vector<Line> result;
    const std::vector<RepeatabilityStudy>& all = m_session.studies();
    for (auto study = all.rbegin(); study != all.rend(); ++study) {
        const Tester* tester = recordWith(m_session.testers(), study->tester.uuid());
        const QString size = study->withdrawn ? tr("taken back")
                                              : QStringLiteral("%1 × %2 × %3")
                                                    .arg(QString::number(study->springs.size()),
                                                         QString::number(study->persons.size()),
                                                         QString::number(study->hits));
        result.push_back({study->id.uuid(),
                          {tester != nullptr ? tester->name : QString(),
                           study->studiedOn.toString(Qt::ISODate), size}});
    }
    return result;
}

ForceUnit StudiesPanel::unit() const {
    return static_cast<ForceUnit>(m_unit->currentData().toInt());
}

RepeatabilityStudy StudiesPanel::proposal() const {
    RepeatabilityStudy study;
    study.studiedOn = QDate::currentDate();
    study.unit = m_preferences.forceUnit();
    study.hits = kUsualHits;
    if (const auto history = m_session.history()) {
        for (const std::size_t life : fittedLives(*history)) {
            if (study.springs.size() < kUsualSprings) {
                study.springs << history->lives[life].label;
            }
        }
    }
    if (!m_preferences.personName().isEmpty()) {
        study.persons << m_preferences.personName();
    }
    return study;
}

void StudiesPanel::fill(const QUuid& record) {
    RepeatabilityStudy study = proposal();
    if (const RepeatabilityStudy* known = recordWith(m_session.studies(), record)) {
        study = *known;
    }
    m_tester->clear();
    for (const Tester& tester : m_session.testers()) {
        m_tester->addItem(tester.name, tester.id.uuid());
    }
    m_tester->setCurrentIndex(record.isNull() ? 0 : m_tester->findData(study.tester.uuid()));
    m_tester->setEnabled(record.isNull());
    m_on->setDate(study.studiedOn);
    m_springs->setText(joined(study.springs));
    m_persons->setText(joined(study.persons));
    {
        const QSignalBlocker quietHits(m_hits);
        const QSignalBlocker quietUnit(m_unit);
        m_hits->setValue(study.hits);
        m_unit->setCurrentIndex(m_unit->findData(static_cast<int>(study.unit)));
    }
    m_note->setText(study.note);
    m_withdrawn->setChecked(study.withdrawn);
    m_withdrawn->setVisible(!record.isNull());
    m_table->reset(0, 0);
    shapeTable();
    putReadings(study);
    showResult();
}

void StudiesPanel::putReadings(const RepeatabilityStudy& study) {
    const int columns = static_cast<int>(study.persons.size()) * study.hits;
    for (std::size_t i = 0; i < study.readings.size() && columns > 0; ++i) {
        const int at = static_cast<int>(i);
        m_table->setForce(at / columns, at % columns, study.readings[i]);
    }
}

void StudiesPanel::shapeTable() {
    const QStringList springs = namesIn(m_springs->text());
    const QStringList persons = namesIn(m_persons->text());
    QStringList heads;
    for (const QString& person : persons) {
        for (int hit = 1; hit <= m_hits->value(); ++hit) {
            heads << tr("%1, hit %2", "a person").arg(person, QString::number(hit));
        }
    }
    m_table->setRowCount(static_cast<int>(springs.size()));
    m_table->setColumnCount(static_cast<int>(heads.size()));
    m_table->setTypedColumns(static_cast<int>(heads.size()));
    m_table->setVerticalHeaderLabels(springs);
    m_table->setHorizontalHeaderLabels(heads);
    showResult();
}

RepeatabilityStudy StudiesPanel::typed() const {
    RepeatabilityStudy study;
    study.tester = TesterId(m_tester->currentData().toUuid());
    study.studiedOn = m_on->date();
    study.springs = namesIn(m_springs->text());
    study.persons = namesIn(m_persons->text());
    study.hits = m_hits->value();
    study.unit = unit();
    for (int row = 0; row < m_table->rowCount(); ++row) {
        for (int column = 0; column < m_table->columnCount(); ++column) {
            study.readings.push_back(m_table->force(row, column, study.unit));
        }
    }
    study.note = normalised(m_note->text());
    study.withdrawn = m_withdrawn->isChecked();
    return study;
}

void StudiesPanel::showResult() {
    const RepeatabilityStudy study = typed();
    if (study.springs.size() < 2 || study.persons.isEmpty()) {
        m_result->setText(tr("Name at least two springs and one person; the table then waits for "
                             "the readings. Let nobody see what the others read."));
        return;
    }
    if (const std::optional<StudyResult> result = resultOf(study)) {
        m_result->setText(
            wording::studySentences(*result, Quantities(study.unit)).join(QLatin1Char('\n')));
        return;
    }
    const auto read = std::count_if(study.readings.begin(), study.readings.end(),
                                    [](const auto& reading) { return reading.has_value(); });
    m_result->setText(tr("%1 of %2 readings are there.")
                          .arg(QString::number(read), QString::number(study.readings.size())));
}

std::optional<int> StudiesPanel::faultyRow() const {
    for (int row = 0; row < m_table->rowCount(); ++row) {
        for (int column = 0; column < m_table->columnCount(); ++column) {
            if (!m_table->isBlank(row, column) && !m_table->force(row, column, unit())) {
                return row;
            }
        }
    }
    return std::nullopt;
}

std::optional<Change> StudiesPanel::read(const QUuid& record,
                                         const std::optional<Authorship>& author) {
    if (m_tester->currentIndex() < 0) {
        m_form->showFault(m_tester, tr("Note the tester first, under “Testers”."));
        return std::nullopt;
    }
    if (const std::optional<int> row = faultyRow()) {
        m_form->showFault(m_table, tr("Spring %1 has an entry that is no force.")
                                       .arg(m_table->verticalHeaderItem(*row)->text()));
        return std::nullopt;
    }
    RepeatabilityStudy study = typed();
    study.id = StudyId(record);
    return author ? Change(AmendStudy{study, *author}) : Change(AddStudy{study});
}

QWidget* StudiesPanel::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::DateInFuture:
    case LogbookFault::DateTooEarly:
        return m_on;
    case LogbookFault::NameTaken:
    case LogbookFault::StudyTooSmall:
        return m_springs;
    case LogbookFault::ReadingOutOfBounds:
        return m_table;
    default:
        return nullptr;
    }
}

} // namespace coilbook
