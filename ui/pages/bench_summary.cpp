#include "ui/pages/bench_summary.h"

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

} // namespace

BenchSummary::BenchSummary(QWidget* parent)
    : QWidget(parent)
    , m_count(new LargeLabel(kCountMillimetres))
    , m_untested(makeText())
    , m_past(makeText())
    , m_message(new BenchMessage)
    , m_close(new QPushButton(tr("Close the round  (Enter)")))
    , m_back(new QPushButton(tr("Back to the springs  (PgUp)"))) {
    followFont(*m_untested, *this, 1.4);
    followFont(*m_past, *this, 1.4);
    followFont(*m_message, *this, 1.2);
    m_count->setBold(true);
    m_count->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    for (QPushButton* button : {m_close, m_back}) {
        keepTarget(*button);
        button->setAutoDefault(true);
    }
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_close);
    buttons->addWidget(m_back);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(fontMetrics().height());
    column->addWidget(m_count);
    column->addWidget(m_past);
    column->addWidget(m_untested);
    column->addWidget(m_message);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(m_close, &QPushButton::clicked, this, &BenchSummary::closeAsked);
    connect(m_back, &QPushButton::clicked, this, &BenchSummary::backAsked);
}

void BenchSummary::showRound(const Round& round, Force limit, const Quantities& quantities) {
    const RoundSummary summary = summaryOf(round, limit);
    m_count->setText(tr("%1 of %2 springs tested").arg(summary.tested).arg(round.stops().size()));
    m_untested->setText(summary.untested.empty()
                            ? tr("Every spring has been tested.")
                            : tr("Not tested: %1. They can still be tested now or later.")
                                  .arg(listOf(round, summary.untested)));
    QStringList past;
    for (const std::size_t index : summary.pastLimit) {
        const RoundStop& stop = round.stops()[index];
        past.append(tr("%1 lost %2", "place, force")
                        .arg(placeText(stop.place),
                             quantities.forceWithUnit(*verdictOf(stop, limit)->loss)));
    }
    m_past->setText(
        past.isEmpty()
            ? tr("No spring is past the limit of %1 by measurement.")
                  .arg(quantities.forceWithUnit(limit))
            : tr("PAST the limit of %1 by measurement: %2. Test these again before "
                 "you close the round; the swap is decided under Review.")
                  .arg(quantities.forceWithUnit(limit), past.join(QStringLiteral(", "))));
}

void BenchSummary::hint() {
    m_message->say(BenchMessage::Kind::Hint,
                   tr("A closed round can be opened again with its date and count of races."));
}

void BenchSummary::takeFocus() {
    m_close->setFocus(Qt::OtherFocusReason);
}

QString BenchSummary::text() const {
    return QStringList{m_count->text(), m_past->text(), m_untested->text()}.join(QLatin1Char('\n'));
}

void BenchSummary::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT closeAsked();
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
