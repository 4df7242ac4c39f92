#include "ui/charts/loss_chart_series.h"

#include "ui/charts/loss_chart_look.h"

#include <QAreaSeries>
#include <QChart>
#include <QGraphicsLayout>
#include <QLegend>
#include <QLineSeries>
#include <QPainter>
#include <QScatterSeries>
#include <QValueAxis>

namespace coilbook {

namespace {

/// The series as points in the user's unit.
class InUnit {
public:
    explicit InUnit(ForceUnit unit)
        : m_unit(unit) {}

    [[nodiscard]] QList<QPointF> readings(const LossChart& chart) const {
        QList<QPointF> points;
        for (const LossChart::Point& point : chart.readings) {
            points.append(QPointF(point.races, point.loss.in(m_unit)));
        }
        return points;
    }

    /// What the estimate goes through: not what was set aside.
    [[nodiscard]] QList<QPointF> corrected(const LossChart& chart) const {
        QList<QPointF> points;
        for (const LossChart::Point& point : chart.readings) {
            if (point.corrected && !point.isSetAside()) {
                points.append(QPointF(point.races, point.corrected->in(m_unit)));
            }
        }
        return points;
    }

    [[nodiscard]] QList<QPointF> means(const std::vector<LossChart::BandPoint>& trend) const {
        QList<QPointF> points;
        for (const LossChart::BandPoint& point : trend) {
            points.append(QPointF(point.races, point.mean.in(m_unit)));
        }
        return points;
    }

    /// One bound of the band along the estimate and the projection.
    [[nodiscard]] QList<QPointF> bounds(const LossChart& chart,
                                        Force LossChart::BandPoint::*bound) const {
        QList<QPointF> points;
        for (const auto* trend : {&chart.estimate, &chart.projection}) {
            for (const LossChart::BandPoint& point : *trend) {
                points.append(QPointF(point.races, (point.*bound).in(m_unit)));
            }
        }
        return points;
    }

private:
    ForceUnit m_unit;
};

void setAxisLook(QValueAxis* axis, const Scheme& scheme, const QFont& font, bool visible) {
    axis->setVisible(visible);
    axis->setLabelsFont(font);
    axis->setLabelsColor(scheme.text);
    axis->setLinePen(QPen(scheme.line, 1.0));
    axis->setGridLinePen(QPen(scheme.grid, 1.0));
}

} // namespace

template <class Series>
Series* LossChartSeries::add(Series* series) {
    m_chart->addSeries(series);
    series->attachAxis(m_races);
    series->attachAxis(m_loss);
    return series;
}

LossChartSeries::LossChartSeries()
    : m_chart(new QChart)
    , m_races(new QValueAxis)
    , m_loss(new QValueAxis)
    , m_pressure(new QValueAxis)
    , m_bandTop(new QLineSeries(m_chart))
    , m_bandBottom(new QLineSeries(m_chart)) {
    m_scene.addItem(m_chart);
    m_chart->setAnimationOptions(QChart::NoAnimation);
    m_chart->setBackgroundVisible(false);
    m_chart->setPlotAreaBackgroundVisible(false);
    m_chart->legend()->hide();
    m_chart->setMargins({});
    m_chart->addAxis(m_races, Qt::AlignBottom);
    m_chart->addAxis(m_loss, Qt::AlignLeft);
    m_chart->addAxis(m_pressure, Qt::AlignRight);
    m_loss->setReverse(true);
    m_pressure->setGridLineVisible(false);
    for (QValueAxis* axis : {m_races, m_loss, m_pressure}) {
        axis->setTickType(QValueAxis::TicksDynamic);
        axis->setTickAnchor(0.0);
        axis->setLabelFormat(QStringLiteral("%.0f"));
    }
    m_band = add(new QAreaSeries(m_bandTop, m_bandBottom));
    m_limit = add(new QLineSeries);
    m_projection = add(new QLineSeries);
    m_estimate = add(new QLineSeries);
    m_raw = add(new QScatterSeries);
    m_corrected = add(new QScatterSeries);
}

void LossChartSeries::setLook(const Scheme& scheme, const QFont& font, bool withAxes,
                              bool provisional) {
    setAxisLook(m_races, scheme, font, withAxes);
    setAxisLook(m_loss, scheme, font, withAxes);
    setAxisLook(m_pressure, scheme, font, withAxes);
    const LossChartLook look =
        lossChartLook(scheme, QFontMetricsF(font).height(), withAxes, provisional);
    m_band->setPen(Qt::NoPen);
    m_band->setBrush(look.band);
    m_limit->setPen(QPen(scheme.limit, withAxes ? 2.0 : 1.5));
    m_estimate->setPen(look.estimate);
    m_projection->setPen(look.projection);
    for (QScatterSeries* readings : {m_raw, m_corrected}) {
        readings->setMarkerShape(QScatterSeries::MarkerShapeCircle);
    }
    m_raw->setMarkerSize(look.ringSize);
    m_raw->setPen(look.ring);
    m_raw->setBrush(scheme.panel);
    m_corrected->setMarkerSize(look.dotSize);
    m_corrected->setPen(Qt::NoPen);
    m_corrected->setBrush(scheme.reading);
}

void LossChartSeries::setData(const LossChart& chart, const LossChartRange& range, ForceUnit unit) {
    const InUnit inUnit(unit);
    setRanges(chart, range, unit);
    const QList<QPointF> bandTop = inUnit.bounds(chart, &LossChart::BandPoint::low90);
    m_band->setVisible(bandTop.size() > 1);
    m_bandTop->replace(bandTop);
    m_bandBottom->replace(inUnit.bounds(chart, &LossChart::BandPoint::high90));
    m_estimate->replace(inUnit.means(chart.estimate));
    m_projection->replace(inUnit.means(chart.projection));
    const double limit = chart.limit.in(unit);
    m_limit->replace({QPointF(range.firstRace, limit), QPointF(range.lastRace, limit)});
    m_raw->replace(inUnit.readings(chart));
    m_corrected->replace(inUnit.corrected(chart));
}

void LossChartSeries::setRanges(const LossChart& chart, const LossChartRange& range,
                                ForceUnit unit) {
    m_races->setRange(range.firstRace, range.lastRace);
    m_races->setTickInterval(range.raceTick);
    m_loss->setRange(range.least.in(unit), range.most.in(unit));
    m_loss->setTickInterval(range.tick.in(unit));
    m_pressure->setTickInterval(range.tick.in(unit));
    if (!chart.baseline) {
        m_pressure->setVisible(false);
    } else {
        m_pressure->setRange((*chart.baseline - range.most).in(unit),
                             (*chart.baseline - range.least).in(unit));
    }
}

void LossChartSeries::render(QPainter& painter, const QRectF& area, const QRectF& plot) {
    const QRectF own(QPointF(), area.size());
    m_scene.setSceneRect(own);
    m_chart->resize(own.size());
    m_chart->setPlotArea(plot.translated(-area.topLeft()));
    m_chart->layout()->setGeometry(own); // else the axes would follow with the next event only
    m_scene.render(&painter, area, own);
}

} // namespace coilbook
