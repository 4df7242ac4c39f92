#include "ui/dialogs/starting_set_form.h"

#include "core/support/text.h"
#include "ui/drawing/scheme.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/scrolling.h"
#include "ui/widgets/whole_number_field.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QHash>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QSet>
#include <QVBoxLayout>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;

QString defaultLabel(const Place& place) {
    return placeText(place).remove(QLatin1Char(' '));
}

} // namespace

StartingSetForm::StartingSetForm(QWidget* parent)
    : QWidget(parent)
    , m_wanted(new QCheckBox(tr("&Note the springs that stand in it now"), this))
    , m_fittedOn(new DateField(this))
    , m_races(new WholeNumberField(0, kMostRaces, this))
    , m_part(new QLineEdit(this))
    , m_places(new QWidget(this))
    , m_grid(nullptr)
    , m_fault(new QLabel(this)) {
    m_wanted->setObjectName(QStringLiteral("springsWanted"));
    m_fittedOn->setObjectName(QStringLiteral("fittedOn"));
    m_races->setObjectName(QStringLiteral("fittedRaces"));
    m_wanted->setChecked(true);
    m_races->setValue(0);
    m_part->setPlaceholderText(tr("As the shop writes it"));
    m_fault->setTextFormat(Qt::PlainText);
    m_fault->setWordWrap(true);
    m_fault->hide();
    connect(m_wanted, &QCheckBox::toggled, m_places, &QWidget::setEnabled);

    auto* facts = new QFormLayout;
    facts->addRow(tr("Fitted &on"), m_fittedOn);
    facts->addRow(tr("Races run by &then"), m_races);
    facts->addRow(tr("&Part or batch of all"), m_part);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_wanted);
    column->addLayout(facts);
    column->addWidget(m_fault);
    column->addWidget(scrolling(m_places), 1);
    setLayoutOf(defaultLayout());
}

void StartingSetForm::setLayoutOf(const EngineLayout& layout) {
    QHash<QString, QString> typed;
    for (const auto& [place, field] : m_labels) {
        typed.insert(placeText(place), field->text());
        delete field;
    }
    m_labels.clear();
    const QList<QLabel*> names = m_places->findChildren<QLabel*>();
    qDeleteAll(names);
    delete m_grid;
    m_grid = new QGridLayout(m_places);
    int column = 0;
    for (const Bank& bank : layout.banks) {
        int row = 0;
        m_grid->addWidget(new QLabel(bank.name, m_places), row, column, 1, 2);
        for (const Place& place : bank.places) {
            const QString text = placeText(place);
            auto* field = new QLineEdit(typed.value(text, defaultLabel(place)), m_places);
            auto* name = new QLabel(text, m_places);
            name->setBuddy(field);
            field->setAccessibleName(tr("Label of the spring at %1").arg(text));
            field->setObjectName(defaultLabel(place));
            ++row;
            m_grid->addWidget(name, row, column);
            m_grid->addWidget(field, row, column + 1);
            m_labels.emplace_back(place, field);
        }
        column += 2;
    }
}

bool StartingSetForm::refuse(QLineEdit* field, const QString& sentence) {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, schemeFor(colours).pastLimit);
    m_fault->setPalette(colours);
    m_fault->setText(sentence);
    m_fault->show();
    field->setFocus();
    return false;
}

bool StartingSetForm::readInto(AddEngine& change) {
    m_fault->hide();
    if (!m_wanted->isChecked()) {
        return true;
    }
    const std::optional<int> races = m_races->value();
    if (!races) {
        return refuse(m_races, tr("Give the races run by then as a whole number, 0 or more."));
    }
    QSet<QString> taken;
    for (const auto& [place, field] : m_labels) {
        const QString label = normalised(field->text());
        if (label.isEmpty()) {
            continue;
        }
        if (taken.contains(caseKey(label))) {
            return refuse(
                field, tr("Two springs have the label “%1”. Give each its own.").arg(shown(label)));
        }
        taken.insert(caseKey(label));
        Spring spring;
        spring.id = SpringId::make();
        spring.label = label;
        spring.part = normalised(m_part->text());
        Fitting fitting;
        fitting.id = FittingId::make();
        fitting.engine = change.engine.id;
        fitting.spring = spring.id;
        fitting.place = place;
        fitting.fittedOn = m_fittedOn->date();
        fitting.engineRaces = *races;
        change.springs.push_back(spring);
        change.fittings.push_back(fitting);
    }
    return true;
}

} // namespace coilbook
