#include "ui/pages/bench_reading_panel.h"

#include "core/wording/wording.h"
#include "ui/drawing/scheme.h"
#include "ui/pages/bench_correction_bar.h"
#include "ui/pages/bench_hits.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_verdict.h"
#include "ui/widgets/follow_font.h"
#include "ui/widgets/large_label.h"
#include "ui/widgets/reading_field.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace coilbook {

namespace {

constexpr double kPlaceMillimetres = 16.0;
constexpr double kUnitMillimetres = 6.0;
constexpr double kPreviousMillimetres = 8.5;
constexpr double kExpectedMillimetres = 6.5;
constexpr double kJudgementMillimetres = 7.0;
// Of the ordinary text
constexpr double kSecondLine = 1.2;
constexpr double kThirdLine = 1.1;

} // namespace

BenchReadingPanel::BenchReadingPanel(QWidget* parent)
    : QWidget(parent)
    , m_place(new LargeLabel(kPlaceMillimetres))
    , m_placeWords(new QLabel)
    , m_crank(new QLabel)
    , m_springLabel(new QLineEdit)
    , m_progress(new QLabel)
    , m_field(new ReadingField)
    , m_unit(new LargeLabel(kUnitMillimetres))
    , m_previous(new LargeLabel(kPreviousMillimetres))
    , m_expected(new LargeLabel(kExpectedMillimetres))
    , m_judgement(new LargeLabel(kJudgementMillimetres))
    , m_verdict(new BenchVerdict)
    , m_trend(new QLabel(QStringLiteral(" ")))
    , m_before(new QLabel)
    , m_hits(new BenchHits)
    , m_message(new BenchMessage)
    , m_foot(new QStackedWidget)
    , m_correction(new BenchCorrectionBar) {
    m_foot->addWidget(makeButtons());
    m_foot->addWidget(m_correction);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2); // a bench laptop at large text has no room to give away
    column->addWidget(makeHeader());
    column->addWidget(makeValueRow());
    column->addWidget(m_judgement);
    column->addWidget(m_verdict);
    auto* beside = new QVBoxLayout; // close together: lines of one paragraph
    beside->setSpacing(0);
    beside->addWidget(m_trend);
    beside->addWidget(m_before);
    column->addLayout(beside);
    column->addWidget(m_hits);
    column->addWidget(m_message);
    column->addStretch(1);
    column->addWidget(m_foot);
    connect(m_hits, &BenchHits::hitChosen, this, &BenchReadingPanel::hitChosen);
    // Enter on the name goes on to the reading.
    connect(m_springLabel, &QLineEdit::returnPressed, m_field, qOverload<>(&QWidget::setFocus));
    m_trend->setTextFormat(Qt::PlainText);
    m_trend->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    m_before->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    followFont(*m_trend, *this, 1.0);
    followFont(*m_before, *this, 1.0);
    followFont(*m_message, *this, kThirdLine);
    mute();
}

QWidget* BenchReadingPanel::makeHeader() {
    m_place->setBold(true);
    m_place->setWidest(QStringLiteral("88 E"));
    for (QLabel* label : {m_placeWords, m_crank, m_progress}) {
        followFont(*label, *this, kSecondLine);
        label->setTextFormat(Qt::PlainText);
    }
    m_crank->setWordWrap(true);
    m_crank->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_springLabel->setAccessibleName(tr("Label of the spring at this place"));
    keepTargetHeight(*m_springLabel);
    m_placeWords->setBuddy(m_springLabel);
    QSizePolicy keepsRoom = m_springLabel->sizePolicy();
    keepsRoom.setRetainSizeWhenHidden(true);
    m_springLabel->setSizePolicy(keepsRoom);
    auto* header = new QWidget;
    auto* grid = new QGridLayout(header);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(m_place, 0, 0, 2, 1);
    grid->addWidget(m_placeWords, 0, 1);
    grid->addWidget(m_springLabel, 0, 2);
    grid->addWidget(m_progress, 0, 3, Qt::AlignRight);
    grid->addWidget(m_crank, 1, 1, 1, 3);
    grid->setColumnStretch(1, 1);
    grid->setHorizontalSpacing(fontMetrics().height());
    return header;
}

QWidget* BenchReadingPanel::makeValueRow() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* beside = new QVBoxLayout;
    beside->setSpacing(0);
    for (LargeLabel* label : {m_previous, m_expected}) {
        label->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        label->setWidest(QStringLiteral("888"));
        beside->addWidget(label);
    }
    m_judgement->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_judgement->setWidest(QStringLiteral("888"));
    m_judgement->setBold(true);
    layout->addLayout(beside, 5);
    layout->addWidget(m_field, 4);
    m_unit->setWidest(QStringLiteral("lbf"));
    layout->addWidget(m_unit);
    return row;
}

QPushButton* BenchReadingPanel::makeButton(const QString& text) {
    auto* button = new QPushButton(text);
    button->setFocusPolicy(Qt::NoFocus);
    keepTarget(*button);
    return button;
}

QWidget* BenchReadingPanel::makeButtons() {
    auto* further = makeButton(tr("Further hit  (+)"));
    auto* back = makeButton(tr("Back  (PgUp)"));
    auto* on = makeButton(tr("Forward  (PgDn)"));
    auto* correct = makeButton(tr("Correct a hit  (/)"));
    m_skip = makeButton(tr("Skip  (\u2212)"));
    m_retest = makeButton(tr("Re-test  (*)"));
    m_retest->setCheckable(true);
    m_finish = makeButton(tr("Finish the round"));
    m_leave = makeButton(tr("Leave, go on later"));
    auto* foot = new QWidget;
    auto* grid = new QGridLayout(foot);
    grid->setContentsMargins(0, 0, 0, 0);
    int cell = 0;
    for (QPushButton* button : {further, m_retest, correct, m_skip, back, on, m_leave, m_finish}) {
        grid->addWidget(button, cell / 4, cell % 4);
        ++cell;
    }
    connect(further, &QPushButton::clicked, m_field, &ReadingField::furtherCommitted);
    connect(m_retest, &QPushButton::clicked, m_field, &ReadingField::retestToggled);
    connect(correct, &QPushButton::clicked, m_field, &ReadingField::correctionAsked);
    connect(m_skip, &QPushButton::clicked, m_field, &ReadingField::skipped);
    connect(back, &QPushButton::clicked, m_field, &ReadingField::steppedBack);
    connect(on, &QPushButton::clicked, m_field, &ReadingField::steppedOn);
    connect(m_leave, &QPushButton::clicked, this, &BenchReadingPanel::leaveAsked);
    connect(m_finish, &QPushButton::clicked, this, &BenchReadingPanel::finishAsked);
    return foot;
}

void BenchReadingPanel::showStop(const RoundStop& stop, const QString& progress,
                                 const Quantities& quantities) {
    m_place->setText(coilbook::placeText(stop.place));
    m_placeWords->setText(
        stop.spring
            ? tr("%1, spring %2", "a place, a label").arg(wording::place(stop.place), stop.label)
            : tr("A new spring. Its label:"));
    m_progress->setText(progress);
    m_springLabel->setVisible(!stop.spring);
    m_previous->setText(
        stop.previous ? tr("before %1", "a pressure").arg(quantities.force(stop.previous->mean))
                      : QString());
    if (!stop.spring && m_springLabel->text().isEmpty()) {
        m_springLabel->setText(stop.label);
    }
    QStringList before;
    const auto tell = [&](const QString& text, const RoundMean& mean) {
        before.append(text.arg(quantities.forceWithUnit(mean.mean), quantities.date(mean.on)));
    };
    if (stop.previous) {
        tell(tr("Previous %1 (%2)"), *stop.previous);
    }
    if (stop.baseline) {
        tell(tr("Baseline %1 (%2)"), *stop.baseline);
    }
    m_before->setText(before.isEmpty() ? tr("No earlier reading: this one is its baseline.")
                                       : before.join(QStringLiteral("   \u00B7   ")));
}

void BenchReadingPanel::judge(const std::optional<RoundVerdict>& verdict, const JudgingRules& rules,
                              const Quantities& quantities) {
    m_verdict->judge(verdict, rules, quantities);
}

void BenchReadingPanel::tellCrank(const QString& sentence) {
    m_crank->setText(sentence);
}

void BenchReadingPanel::tellExpected(const QString& text) {
    m_expected->setText(text);
}

void BenchReadingPanel::tellJudgement(const BenchJudgement& judgement) {
    m_judgement->setText(judgement.words);
    m_tone = judgement.tone;
    mute();
}

void BenchReadingPanel::tellTrend(const QString& text) {
    // Never empty: nothing moves while typing.
    m_trend->setText(text.isEmpty() ? QStringLiteral(" ") : text);
    m_trend->setToolTip(text);
}

QString BenchReadingPanel::trendText() const {
    return m_trend->text().trimmed();
}

void BenchReadingPanel::setUnit(ForceUnit unit) {
    m_unit->setText(Quantities(unit).unitName());
}

void BenchReadingPanel::setRetest(bool retest) {
    m_retest->setChecked(retest);
}

void BenchReadingPanel::setQuickTest(bool quick) {
    m_skip->setEnabled(!quick);
    m_leave->setEnabled(!quick);
    m_finish->setText(quick ? tr("Done  (Esc)") : tr("Finish the round"));
}

void BenchReadingPanel::showHits(const RoundStop& stop, std::optional<std::size_t> chosen) {
    m_hits->list(stop.hits, chosen);
    if (chosen) {
        const RoundHit& hit = stop.hits.at(*chosen);
        m_correction->ask(tr("hit %1 of %2, %3")
                              .arg(QString::number(hit.number), coilbook::placeText(stop.place),
                                   hit.value.text()));
    }
    m_foot->setCurrentIndex(chosen ? 1 : 0);
}

QString BenchReadingPanel::placeText() const {
    return m_place->text();
}

QString BenchReadingPanel::verdictText() const {
    return m_verdict->text();
}

QString BenchReadingPanel::beforeText() const {
    return m_before->text();
}

QString BenchReadingPanel::previousText() const {
    return m_previous->text();
}

QString BenchReadingPanel::expectedText() const {
    return m_expected->text();
}

QString BenchReadingPanel::judgementText() const {
    return m_judgement->text();
}

QString BenchReadingPanel::crankText() const {
    return m_crank->text();
}

QString BenchReadingPanel::hitsText() const {
    return m_hits->text();
}

void BenchReadingPanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        mute();
    }
}

void BenchReadingPanel::mute() {
    const Scheme scheme = schemeFor(palette());
    m_place->setColour(scheme.accent);
    m_unit->setColour(scheme.mutedText);
    m_expected->setColour(scheme.mutedText);
    m_judgement->setColour(m_tone == JudgementTone::Good   ? scheme.sound
                           : m_tone == JudgementTone::Look ? scheme.due
                           : m_tone == JudgementTone::Stop ? scheme.pastLimit
                                                           : scheme.mutedText);
}

} // namespace coilbook
