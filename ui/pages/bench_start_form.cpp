#include "ui/pages/bench_start_form.h"

#include "core/support/text.h"
#include "core/wording/tester_words.h"
#include "core/wording/wording.h"
#include "ui/drawing/scheme.h"
#include "ui/widgets/follow_font.h"

#include <QComboBox>
#include <QDateEdit>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QStandardItemModel>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kMostRaces = 9999;

QLabel* makeErrorLabel() {
    auto* label = new QLabel;
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

} // namespace

BenchStartForm::BenchStartForm(QWidget* parent)
    : QWidget(parent)
    , m_title(new QLabel)
    , m_sentence(makeErrorLabel())
    , m_open(new QPushButton)
    , m_on(new QDateEdit)
    , m_races(new QSpinBox)
    , m_tester(new QComboBox)
    , m_inspector(new QLineEdit)
    , m_temperature(new QLineEdit)
    , m_order(new QComboBox)
    , m_offer(makeErrorLabel())
    , m_existing(new QPushButton(tr("Go on with that inspection")))
    , m_start(new QPushButton(tr("Start the round")))
    , m_place(new QComboBox)
    , m_quick(new QPushButton(tr("Test this one only"))) {
    followFont(*m_title, *this, 1.6);
    followFont(*m_sentence, *this, 1.2);
    m_on->setDisplayFormat(QStringLiteral("yyyy-MM-dd"));
    m_on->setCalendarPopup(true);
    m_races->setRange(0, kMostRaces);
    m_tester->setEditable(true);
    m_tester->setInsertPolicy(QComboBox::NoInsert);
    m_tester->setCompleter(nullptr); // a new name may begin like a known one
    m_tester->lineEdit()->setPlaceholderText(tr("Choose one or type a new name"));
    m_temperature->setPlaceholderText(tr("°C, may stay empty"));
    m_order->addItem(tr("Bank by bank, front to rear"), QVariant::fromValue(RoundOrder::ByBank));
    m_order->addItem(tr("In firing order, crank turned from cylinder to cylinder"),
                     QVariant::fromValue(RoundOrder::ByFiringOrder));
    m_order->addItem(tr("By cylinder number"), QVariant::fromValue(RoundOrder::ByCylinder));
    m_order->addItem(tr("In this engine\u2019s own order"), QVariant::fromValue(RoundOrder::Own));
    m_order->setObjectName(QStringLiteral("roundOrder"));

    auto* grid = new QGridLayout(this);
    grid->setVerticalSpacing(fontMetrics().height() / 3);
    grid->setHorizontalSpacing(fontMetrics().height());
    grid->addWidget(m_title, 0, 0, 1, 3);
    grid->addWidget(m_sentence, 1, 0, 1, 3);
    grid->addWidget(m_open, 2, 1);
    m_onError = addRow(grid, tr("&Date"), m_on);
    m_racesError = addRow(grid, tr("&Races run by then"), m_races);
    m_testerError = addRow(grid, tr("&Tester"), m_tester);
    addRow(grid, tr("&Inspector"), m_inspector);
    m_temperatureError = addRow(grid, tr("Engine te&mperature"), m_temperature);
    addRow(grid, tr("&Order of the round"), m_order);
    grid->addWidget(m_start, grid->rowCount(), 1);
    const int offer = grid->rowCount();
    grid->addWidget(m_offer, offer, 0, 1, 2);
    grid->addWidget(m_existing, offer, 2, Qt::AlignLeft);
    const int quick = grid->rowCount();
    auto* quickName = new QLabel(tr("Or one &spring alone"));
    quickName->setBuddy(m_place);
    grid->addWidget(quickName, quick, 0);
    grid->addWidget(m_place, quick, 1);
    grid->addWidget(m_quick, quick, 2, Qt::AlignLeft);
    grid->setRowStretch(grid->rowCount(), 1);
    grid->setColumnStretch(2, 1);
    for (QWidget* target : std::initializer_list<QWidget*>{m_on, m_races, m_tester, m_inspector,
                                                           m_temperature, m_order, m_place}) {
        keepTargetHeight(*target);
    }
    for (QPushButton* button : {m_open, m_existing, m_start, m_quick}) {
        keepTarget(*button);
        button->setAutoDefault(true); // Enter presses the button that has the focus
    }
    offerOpen({});
    offerExisting({});
    connect(m_start, &QPushButton::clicked, this, [this] { start(false); });
    connect(m_quick, &QPushButton::clicked, this, [this] { start(true); });
    connect(m_open, &QPushButton::clicked, this,
            [this] { Q_EMIT openAsked(m_order->currentData().value<RoundOrder>()); });
    connect(m_existing, &QPushButton::clicked, this, [this] {
        if (const std::optional<BenchStart> filled = filledIn(m_existingQuick)) {
            Q_EMIT existingAsked(*filled);
        }
    });
    connect(m_on, &QDateEdit::dateChanged, this, &BenchStartForm::forgetOffer);
    connect(m_races, &QSpinBox::valueChanged, this, &BenchStartForm::forgetOffer);
    connect(m_on, &QDateEdit::dateChanged, this, &BenchStartForm::advise);
    connect(m_tester, &QComboBox::currentTextChanged, this, &BenchStartForm::advise);
    connect(m_temperature, &QLineEdit::textEdited, this, &BenchStartForm::advise);
}

QLabel* BenchStartForm::addRow(QGridLayout* grid, const QString& name, QWidget* field) {
    auto* label = new QLabel(name);
    label->setBuddy(field);
    auto* error = makeErrorLabel();
    const int row = grid->rowCount();
    grid->addWidget(label, row, 0);
    grid->addWidget(field, row, 1);
    grid->addWidget(error, row, 2);
    return error;
}

void BenchStartForm::prefill(const EngineLog& log, const QDate& today, const QString& person,
                             RoundOrder order) {
    const RoundPrefill known = roundPrefill(log);
    m_title->setText(tr("Start an inspection of %1").arg(log.engine.name));
    m_on->setDate(today);
    m_races->setValue(known.races);
    m_inspector->setText(person);
    m_temperature->clear();
    m_order->setCurrentIndex(m_order->findData(QVariant::fromValue(order)));
    adopt(log);
    // An order of the user's own is laid down in the engine's settings, with its layout.
    if (order == RoundOrder::Own && log.engine.layout.ownRound.empty()) {
        m_order->setCurrentIndex(m_order->findData(QVariant::fromValue(RoundOrder::ByBank)));
    }
    const Tester* tester = known.tester ? testerWith(log, *known.tester) : nullptr;
    m_tester->setCurrentText(tester != nullptr ? tester->name : QString());
    m_place->clear();
    for (const Place& place : log.engine.layout.places()) {
        m_place->addItem(QStringLiteral("%1   %2").arg(placeText(place), wording::place(place)),
                         QVariant::fromValue(place));
    }
    clearErrors();
    offerExisting({});
}

void BenchStartForm::adopt(const EngineLog& log) {
    m_testers = log.testers;
    m_calibrations = log.calibrations;
    m_correctsTemperature = log.engine.correctsTemperature;
    const int own = m_order->findData(QVariant::fromValue(RoundOrder::Own));
    auto* orders = qobject_cast<QStandardItemModel*>(m_order->model());
    orders->item(own)->setEnabled(!log.engine.layout.ownRound.empty());
    m_order->setItemData(own, tr("Laid down under Engine, Settings, with its layout"),
                         Qt::ToolTipRole);
    listTesters(log);
}

void BenchStartForm::listTesters(const EngineLog& log) {
    const QString typed = m_tester->currentText();
    m_tester->clear();
    for (const Tester& tester : log.testers) {
        m_tester->addItem(tester.name);
    }
    m_tester->setCurrentIndex(-1);
    m_tester->setCurrentText(typed);
}

void BenchStartForm::tell(const QString& sentence) {
    m_sentence->setText(sentence);
    m_sentence->setVisible(!sentence.isEmpty());
}

void BenchStartForm::offerOpen(const QString& round) {
    m_open->setText(round);
    m_open->setVisible(!round.isEmpty());
}

void BenchStartForm::offerExisting(const QString& inspection) {
    m_offer->setText(inspection);
    m_existing->setVisible(!inspection.isEmpty());
    if (!inspection.isEmpty()) {
        m_existing->setFocus(Qt::OtherFocusReason);
    }
}

void BenchStartForm::forgetOffer() {
    clearErrors();
    offerExisting({});
}

void BenchStartForm::showError(const Error& error, const QString& sentence) {
    const auto* fault = std::get_if<LogbookFault>(&error.fault);
    QLabel* label = m_offer;
    QWidget* field = m_start;
    if (fault != nullptr) {
        switch (*fault) {
        case LogbookFault::DateInFuture:
        case LogbookFault::DateTooEarly:
            label = m_onError;
            field = m_on;
            break;
        case LogbookFault::RacesGoBack:
        case LogbookFault::RaceAfterInspection:
            label = m_racesError;
            field = m_races;
            break;
        case LogbookFault::EmptyName:
        case LogbookFault::NameDiffersInCaseOnly:
            label = m_testerError;
            field = m_tester;
            break;
        default:
            break;
        }
    }
    label->setText(sentence);
    field->setFocus(Qt::OtherFocusReason);
}

void BenchStartForm::setSaving(bool saving) {
    for (QPushButton* button : {m_open, m_existing, m_start, m_quick}) {
        button->setEnabled(!saving);
    }
}

void BenchStartForm::takeFocus() {
    QPushButton* button = m_open->isHidden() ? m_start : m_open;
    button->setFocus(Qt::OtherFocusReason);
}

void BenchStartForm::clearErrors() {
    const QColor colour = schemeFor(palette()).pastLimit;
    for (QLabel* label : {m_onError, m_racesError, m_testerError, m_temperatureError, m_offer}) {
        label->clear();
        QPalette warning = label->palette();
        warning.setColor(QPalette::WindowText, colour);
        label->setPalette(warning);
    }
    advise();
}

const Tester* BenchStartForm::chosenTester() const {
    const QString name = caseKey(normalised(m_tester->currentText()));
    const auto known = std::find_if(m_testers.begin(), m_testers.end(),
                                    [&](const Tester& each) { return caseKey(each.name) == name; });
    return known == m_testers.end() ? nullptr : &*known;
}

void BenchStartForm::advise() {
    const Tester* tester = chosenTester();
    const Calibration* newest =
        tester != nullptr ? newestCalibration(m_calibrations, tester->id, m_on->date()) : nullptr;
    m_testerError->setText(newest != nullptr
                               ? wording::overdueSentence(tester->name, *newest, m_on->date())
                               : QString());
    const bool missed = m_correctsTemperature && m_temperature->text().trimmed().isEmpty();
    m_temperatureError->setText(
        missed ? tr("Note it: without it these readings cannot be brought to 20 °C.") : QString());
}

std::optional<BenchStart> BenchStartForm::filledIn(bool quick) {
    clearErrors();
    BenchStart filled;
    filled.facts.on = m_on->date();
    filled.facts.races = m_races->value();
    filled.facts.inspector = m_inspector->text();
    filled.order = m_order->currentData().value<RoundOrder>();
    if (quick) {
        filled.only = m_place->currentData().value<Place>();
    }
    if (const Tester* tester = chosenTester()) {
        filled.facts.tester = tester->id;
    } else {
        filled.newTester = normalised(m_tester->currentText());
    }
    if (!m_temperature->text().trimmed().isEmpty()) {
        filled.facts.engineTemperature = temperatureFromText(m_temperature->text());
        if (!filled.facts.engineTemperature) {
            m_temperatureError->setText(
                tr("Give the engine's temperature in °C, from \u221240 to 250, or leave it "
                   "empty."));
            m_temperature->setFocus(Qt::OtherFocusReason);
            return std::nullopt;
        }
    }
    return filled;
}

void BenchStartForm::start(bool quick) {
    m_existingQuick = quick;
    if (const std::optional<BenchStart> filled = filledIn(quick)) {
        Q_EMIT startAsked(*filled);
    }
}

} // namespace coilbook
