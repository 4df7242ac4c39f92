#include "ui/pages/review_detail.h"

#include "core/wording/words.h"

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
    return entry.retest ? ReviewDetail::tr("re-test, counts") : ReviewDetail::tr("counts");
}

} // namespace

ReviewDetail::ReviewDetail(QWidget* parent)
    : QWidget(parent)
    , m_heading(new QLabel(this))
    , m_chart(new LossChartView(this))
    , m_values(new QLabel(this))
    , m_trail(new QTreeWidget(this)) {
    m_heading->setTextFormat(Qt::PlainText);
    m_heading->setWordWrap(true);
    QFont heading = m_heading->font();
    heading.setBold(true);
    m_heading->setFont(heading);
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
    column->addWidget(m_heading);
    column->addWidget(m_chart, 3);
    column->addWidget(m_values);
    column->addWidget(m_trail, 1);
    connect(m_chart, &LossChartView::currentChanged, this, &ReviewDetail::writeValues);
}

void ReviewDetail::showSpring(const EngineLog& log, const LossChart& chart,
                              const LossChartRange& range, const QString& heading,
                              const Quantities& quantities) {
    m_quantities = quantities;
    m_heading->setText(heading);
    m_chart->setChart(chart, range, quantities);
    fillTrail(readingTrail(log, chart.spring));
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
    if (reading.setAside) {
        text += tr(", set aside: left out of the estimate");
    }
    m_values->setText(text + QLatin1Char('.'));
    m_chart->setAccessibleDescription(m_values->text());
}

void ReviewDetail::fillTrail(const std::vector<TrailEntry>& entries) {
    m_trail->clear();
    for (const TrailEntry& entry : entries) {
        auto* item = new QTreeWidgetItem(m_trail);
        item->setText(Day, m_quantities.date(entry.on));
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
