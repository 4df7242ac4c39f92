#include "ui/pages/bench_summary.h"

#include "core/wording/estimate_words.h"
#include "core/wording/round_words.h"
#include "ui/pages/bench_message.h"
#include "ui/widgets/follow_font.h"
#include "ui/widgets/large_label.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace coilbook {

namespace {

constexpr double kCountMillimetres = 9.0;

QLabel* makeText() {
    auto* label = new QLabel;
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

QString listOf(const Round& round, const std::vector<std::size_t>& indices) {
    QStringList places;
    for (const std::size_t index : indices) {
        places.append(placeText(round.stops()[index].place));
    }
    return places.join(QStringLiteral(", "));
}

/// What the readings of the round share, and whether that is plausible; empty until it is known.
QString shiftLine(const RoundClosing& closing, const Quantities& quantities) {
    if (!closing.check) {
        return {};
    }
    if (closing.check->alarms()) {
        return wording::roundCheck(*closing.check, quantities);
    }
    const Force shift = closing.check->shift.mean;
    return BenchSummary::tr("The round as a whole reads about %1, which is plausible.",
                            "an amount low or high")
        .arg(wording::lowOrHigh(shift, quantities));
}

} // namespace

BenchSummary::BenchSummary(QWidget* parent)
    : QWidget(parent)
    , m_count(new LargeLabel(kCountMillimetres))
    , m_lines(makeText())
    , m_message(new BenchMessage)
    , m_close(new QPushButton(tr("Close the round  (Enter)")))
    , m_back(new QPushButton(tr("Back to the springs  (PgUp)")))
    , m_again(new QPushButton(tr("Test these again  (*)"))) {
    followFont(*m_lines, *this, 1.25);
    followFont(*m_message, *this, 1.2);
    m_count->setBold(true);
    m_count->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    for (QPushButton* button : {m_close, m_again, m_back}) {
        keepTarget(*button);
        button->setAutoDefault(true);
    }
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_close);
    buttons->addWidget(m_again);
    buttons->addWidget(m_back);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(fontMetrics().height());
    column->addWidget(m_count);
    column->addWidget(m_lines);
    column->addWidget(m_message);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(m_close, &QPushButton::clicked, this, &BenchSummary::closeAsked);
    connect(m_back, &QPushButton::clicked, this, &BenchSummary::backAsked);
    connect(m_again, &QPushButton::clicked, this, &BenchSummary::retestsAsked);
}

void BenchSummary::showRound(const Round& round, const RoundClosing& closing,
                             const JudgingRules& rules, const Quantities& quantities) {
    const RoundSummary& measured = closing.measured;
    m_count->setText(tr("%1 of %2 springs tested").arg(measured.tested).arg(round.stops().size()));
    const QString limit = quantities.forceWithUnit(rules.limit);
    QStringList lines;
    lines << (measured.untested.empty() ? tr("Every spring has been tested.")
                                        : tr("Not tested: %1. They can still be tested now or "
                                             "later.")
                                              .arg(listOf(round, measured.untested)));
    lines << shiftLine(closing, quantities);
    QStringList past;
    for (const std::size_t index : closing.pastLimit) {
        const RoundStop& stop = round.stops()[index];
        const std::optional<RoundVerdict> verdict = verdictOf(stop, rules.limit);
        const bool told = verdict && verdict->loss.has_value();
        past << (told ? tr("%1 lost %2", "place, force")
                            .arg(placeText(stop.place), quantities.forceWithUnit(*verdict->loss))
                      : placeText(stop.place));
    }
    lines << (past.isEmpty() ? tr("No spring is past the limit of %1.").arg(limit)
                             : tr("PAST the limit of %1: %2. The swap is decided under Review.")
                                   .arg(limit, past.join(QStringLiteral(", "))));
    if (!closing.due.empty()) {
        lines << (rules.racesAhead == 1
                      ? tr("Due within one race: %1.").arg(listOf(round, closing.due))
                      : tr("Due within %1 races: %2.")
                            .arg(QString::number(rules.racesAhead), listOf(round, closing.due)));
    }
    if (!closing.repeat.empty()) {
        lines
            << tr("Hits that do not agree with each other: %1.").arg(listOf(round, closing.repeat));
    }
    lines << (closing.retest.empty() ? tr("Nothing calls for another test.")
                                     : tr("Test these again before you close the round: %1.")
                                           .arg(listOf(round, closing.retest)));
    lines.removeAll(QString());
    m_lines->setText(lines.join(QLatin1Char('\n')));
    m_again->setEnabled(!closing.retest.empty());
}

void BenchSummary::hint() {
    m_message->say(BenchMessage::Kind::Hint,
                   tr("A closed round can be opened again with its date and count of races."));
}

void BenchSummary::takeFocus() {
    m_close->setFocus(Qt::OtherFocusReason);
}

QString BenchSummary::text() const {
    return m_count->text() + QLatin1Char('\n') + m_lines->text();
}

void BenchSummary::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT closeAsked();
        return;
    case Qt::Key_Asterisk:
        if (m_again->isEnabled()) {
            Q_EMIT retestsAsked();
        }
        return;
    case Qt::Key_PageUp:
    case Qt::Key_Escape:
        Q_EMIT backAsked();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

} // namespace coilbook
