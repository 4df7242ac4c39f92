#include "ui/pages/review_detail.h"

#include "core/wording/tester_words.h"
#include "core/wording/words.h"
#include "ui/pages/review_decisions.h"

#include <QHeaderView>
#include <QLabel>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace coilbook {

namespace {

enum TrailColumn { Day, Races, Spot, Hit, Value, TakenWith, Became, TrailColumns };

QString unitName(ForceUnit unit) {
    return unit == ForceUnit::PoundForce ? QStringLiteral("lbf") : QStringLiteral("N");
}

/// The local day of a moment as the logbook keeps it; imported rows may have none.
QString dayOf(const Moment& moment) {
    const QDateTime utc = QDateTime::fromString(moment.utc, Qt::ISODateWithMs);
    return utc.isValid() ? utc.toOffsetFromUtc(moment.utcOffsetMinutes * 60)
                               .toString(QStringLiteral("yyyy-MM-dd HH:mm"))
                         : QString();
}

QString signedBy(const Authorship& author) {
    QStringList parts;
    for (const QString& part : {author.who, dayOf(author.at), author.why}) {
        if (!part.isEmpty()) {
            parts << part;
        }
    }
    return parts.join(QStringLiteral(", "));
}

QString sayText(ReadingJudgement judgement) {
    switch (judgement) {
    case ReadingJudgement::Kept:
        return ReviewDetail::tr("kept");
    case ReadingJudgement::SetAside:
        return ReviewDetail::tr("set aside");
    case ReadingJudgement::DropConfirmed:
        return ReviewDetail::tr("a real drop");
    case ReadingJudgement::DropDenied:
        return ReviewDetail::tr("no drop, set aside");
    case ReadingJudgement::LeftToModel:
        break;
    }
    return {};
}

QString becameText(const TrailEntry& entry) {
    const QString author = entry.amendedBy ? signedBy(*entry.amendedBy) : QString();
    switch (entry.fate) {
    case ReadingFate::Corrected:
        return author.isEmpty() ? ReviewDetail::tr("amended")
                                : ReviewDetail::tr("amended: %1", "who, when, why").arg(author);
    case ReadingFate::Withdrawn:
        return author.isEmpty() ? ReviewDetail::tr("withdrawn")
                                : ReviewDetail::tr("withdrawn: %1", "who, when, why").arg(author);
    case ReadingFate::Retested:
        return ReviewDetail::tr("tested again");
    case ReadingFate::Counts:
        break;
    }
    QString became =
        entry.retest ? ReviewDetail::tr("re-test, counts") : ReviewDetail::tr("counts");
    if (!entry.say) {
        return became;
    }
    const QString said = sayText(entry.say->judgement);
    const QString by = signedBy(entry.say->author);
    return by.isEmpty() ? said : ReviewDetail::tr("%1: %2", "what; who, when, why").arg(said, by);
}

} // namespace

ReviewDetail::ReviewDetail(QWidget* parent)
    : QWidget(parent)
    , m_chart(new LossChartView(this))
    , m_values(new QLabel(this))
    , m_decisions(new ReviewDecisions(this))
    , m_trail(new QTreeWidget(this)) {
    m_values->setTextFormat(Qt::PlainText);
    m_values->setWordWrap(true);
    m_trail->setRootIsDecorated(false);
    m_trail->setUniformRowHeights(true);
    m_trail->setAllColumnsShowFocus(true);
    m_trail->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_trail->setHeaderLabels({tr("Day"), tr("Races"), tr("Place"), tr("Hit"), tr("Reading"),
                              tr("Tester"), tr("What became of it")});
    m_trail->setAccessibleName(tr("All readings of this spring"));
    m_trail->header()->setStretchLastSection(true);
    m_trail->setMinimumHeight(fontMetrics().height() * 5);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_chart, 3);
    column->addWidget(m_values);
    column->addWidget(m_decisions);
    column->addWidget(m_trail, 1);
    connect(m_chart, &LossChartView::currentChanged, this, &ReviewDetail::showReading);
    connect(m_trail, &QTreeWidget::currentItemChanged, this, &ReviewDetail::onTrailRow);
    connect(m_decisions, &ReviewDecisions::decided, this, [this](ReadingJudgement judgement) {
        const LossChart& chart = m_chart->chart();
        Q_EMIT decided(chart.readings[*m_chart->current()].inspection, chart.spring, judgement);
    });
}

void ReviewDetail::showSpring(const EngineLog& log, const LossChart& chart,
                              const LossChartRange& range, const Quantities& quantities) {
    m_quantities = quantities;
    m_said = log.decisions;
    fillTrail(readingTrail(log, chart.spring));
    m_chart->setChart(chart, range, quantities);
}

void ReviewDetail::showReading() {
    writeValues();
    offerDecisions();
    showInTrail();
}

void ReviewDetail::offerDecisions() {
    if (!m_chart->current()) {
        m_decisions->offerNothing();
        return;
    }
    const LossChart::Point& reading = m_chart->chart().readings[*m_chart->current()];
    m_decisions->offer(reading,
                       judgementInForce(m_said, reading.inspection, m_chart->chart().spring));
}

/// Chooses the first row of the inspection in view, unless one of its rows is chosen.
void ReviewDetail::showInTrail() {
    if (!m_chart->current()) {
        return;
    }
    const QUuid inspection = m_chart->chart().readings[*m_chart->current()].inspection.uuid();
    const QTreeWidgetItem* chosen = m_trail->currentItem();
    if (chosen != nullptr && chosen->data(Day, Qt::UserRole).toUuid() == inspection) {
        return;
    }
    for (int row = 0; row < m_trail->topLevelItemCount(); ++row) {
        QTreeWidgetItem* item = m_trail->topLevelItem(row);
        if (item->data(Day, Qt::UserRole).toUuid() == inspection) {
            const QSignalBlocker quiet(m_trail);
            m_trail->setCurrentItem(item);
            return;
        }
    }
}

void ReviewDetail::onTrailRow() {
    const QTreeWidgetItem* chosen = m_trail->currentItem();
    if (chosen == nullptr) {
        return;
    }
    const QUuid inspection = chosen->data(Day, Qt::UserRole).toUuid();
    const std::vector<LossChart::Point>& readings = m_chart->chart().readings;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (readings[i].inspection.uuid() == inspection) {
            m_chart->setCurrent(i);
        }
    }
}

QString ReviewDetail::values() const {
    return m_values->text();
}

void ReviewDetail::writeValues() {
    if (!m_chart->current()) {
        m_values->setText(tr("This spring has not been read yet."));
        return;
    }
    const LossChart::Point& reading = m_chart->chart().readings[*m_chart->current()];
    const QString hits =
        reading.hits == 1 ? tr("1 hit") : tr("%1 hits").arg(QString::number(reading.hits));
    QString text =
        tr("%1 after %2: %3 of %4, loss %5", "day, races, mean, hits, force")
            .arg(m_quantities.date(reading.on), wording::races(static_cast<int>(reading.races)),
                 m_quantities.forceWithUnit(reading.pressure), hits,
                 m_quantities.forceWithUnit(reading.loss));
    if (!reading.tester.isEmpty()) {
        text += tr(", tester %1").arg(reading.tester);
    }
    text += QLatin1Char('.');
    for (const QString& finding : findings(reading)) {
        text += QLatin1Char(' ') + finding;
    }
    m_values->setText(text);
    m_chart->setAccessibleDescription(m_values->text());
}

/// What the model makes of a reading, in sentences.
QStringList ReviewDetail::findings(const LossChart::Point& reading) const {
    QStringList sentences;
    const QString correction = wording::correctionSentence(reading.reading, m_quantities);
    if (!correction.isEmpty()) {
        sentences << correction + QLatin1Char('.');
    }
    if (reading.corrected && !reading.isSetAside()) {
        sentences << tr("Without the inspection's shift the loss is %1.", "a force")
                         .arg(m_quantities.forceWithUnit(*reading.corrected));
    }
    if (reading.shift) {
        const bool low = *reading.shift < Force();
        const QString amount = m_quantities.forceWithUnit(low ? -*reading.shift : *reading.shift);
        sentences << (low ? tr("All springs read about %1 low in this inspection.").arg(amount)
                          : tr("All springs read about %1 high in this inspection.").arg(amount));
    }
    if (reading.hitsSetAside > 0) {
        sentences << (reading.hitsSetAside == 1
                          ? tr("One hit lies too far from the others and is not counted.")
                          : tr("%1 hits lie too far from the others and are not counted.")
                                .arg(QString::number(reading.hitsSetAside)));
    }
    if (!reading.event) {
        return sentences;
    }
    switch (reading.event->kind) {
    case EventFinding::Kind::Misread:
        sentences << (reading.event->byUser
                          ? tr("Set aside by the team: not part of the estimate.")
                          : tr("Set aside as a misread: not part of the estimate."));
        break;
    case EventFinding::Kind::Drop:
        sentences << (reading.event->byUser
                          ? tr("The spring dropped here, as its re-test confirmed.")
                          : tr("The spring dropped here, beside its steady wear."));
        break;
    case EventFinding::Kind::PendingDrop:
        sentences << tr("The spring dropped or the reading is wrong: test it again to tell.");
        break;
    }
    return sentences;
}

void ReviewDetail::fillTrail(const std::vector<TrailEntry>& entries) {
    const QSignalBlocker quiet(m_trail);
    m_trail->clear();
    for (const TrailEntry& entry : entries) {
        auto* item = new QTreeWidgetItem(m_trail);
        item->setText(Day, m_quantities.date(entry.on));
        item->setData(Day, Qt::UserRole, entry.inspection.uuid());
        item->setText(Races, QString::number(entry.races));
        item->setText(Spot, placeText(entry.place));
        item->setText(Hit, QString::number(entry.hit));
        item->setText(Value, entry.value.text() + QLatin1Char(' ') + unitName(entry.value.unit()));
        item->setText(TakenWith, entry.tester);
        item->setText(Became, becameText(entry));
        item->setToolTip(Became, entry.note);
        item->setTextAlignment(Value, Qt::AlignRight | Qt::AlignVCenter);
        if (entry.fate != ReadingFate::Counts) {
            QFont struck = m_trail->font();
            struck.setStrikeOut(true);
            item->setFont(Value, struck);
        }
    }
    for (int column = 0; column < TrailColumns - 1; ++column) {
        m_trail->resizeColumnToContents(column);
    }
}

} // namespace coilbook
