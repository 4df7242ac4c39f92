#include "ui/charts/calibration_chart.h"

#include "core/assessment/loss_chart.h"
#include "ui/drawing/scheme.h"

#include <QAreaSeries>
#include <QChart>
#include <QChartView>
#include <QEvent>
#include <QGraphicsLayout>
#include <QLegend>
#include <QLineSeries>
#include <QScatterSeries>
#include <QVBoxLayout>
#include <QValueAxis>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr int kIntervals = 4;

/// An axis with round ends that holds both values.
void hold(QValueAxis& axis, double least, double most) {
    const double span = most > least ? most - least : 1.0;
    const double tick = roundTick(span, kIntervals);
    const double first = std::floor(least / tick);
    const double last = std::ceil(most / tick);
    axis.setRange(first * tick, last * tick);
    axis.setTickCount(static_cast<int>(last - first) + 1);
    axis.setLabelFormat(tick < 1.0 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
}

} // namespace

CalibrationChart::CalibrationChart(QWidget* parent)
    : QWidget(parent)
    , m_chart(new QChart)
    , m_view(new QChartView(m_chart, this))
    , m_points(new QScatterSeries)
    , m_curve(new QLineSeries)
    , m_low(new QLineSeries(this))
    , m_high(new QLineSeries(this))
    , m_band(new QAreaSeries(m_high, m_low))
    , m_across(new QValueAxis)
    , m_up(new QValueAxis) {
    m_chart->setAnimationOptions(QChart::NoAnimation);
    m_chart->legend()->hide();
    m_chart->layout()->setContentsMargins(0, 0, 0, 0);
    m_chart->addAxis(m_across, Qt::AlignBottom);
    m_chart->addAxis(m_up, Qt::AlignLeft);
    for (QAbstractSeries* series :
         {static_cast<QAbstractSeries*>(m_band), static_cast<QAbstractSeries*>(m_curve),
          static_cast<QAbstractSeries*>(m_points)}) {
        m_chart->addSeries(series);
        series->attachAxis(m_across);
        series->attachAxis(m_up);
    }
    m_view->setRenderHint(QPainter::Antialiasing);
    m_view->setFrameShape(QFrame::NoFrame);
    m_view->setFocusPolicy(Qt::NoFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_view);
    followPalette();
}

void CalibrationChart::show(const CalibrationPicture& picture, const Quantities& quantities) {
    const ForceUnit unit = quantities.unit();
    QList<QPointF> points;
    QList<QPointF> curve;
    QList<QPointF> low;
    QList<QPointF> high;
    for (const CalibrationPicture::Point& point : picture.points) {
        points.append({point.reference.in(unit), point.error.in(unit)});
    }
    for (const CalibrationPicture::CurvePoint& point : picture.curve) {
        const double x = point.reference.in(unit);
        curve.append({x, point.error.in(unit)});
        if (point.low95 && point.high95) {
            low.append({x, point.low95->in(unit)});
            high.append({x, point.high95->in(unit)});
        }
    }
    m_points->replace(points);
    m_curve->replace(curve);
    m_low->replace(low);
    m_high->replace(high);
    m_band->setVisible(!low.isEmpty());
    m_across->setTitleText(tr("force, %1").arg(quantities.unitName()));
    m_up->setTitleText(tr("too much, %1").arg(quantities.unitName()));
    setRanges(picture, unit);
}

void CalibrationChart::setRanges(const CalibrationPicture& picture, ForceUnit unit) {
    double right = 1.0;
    double least = 0.0;
    double most = 0.0;
    const auto take = [&](Force value) {
        least = std::min(least, value.in(unit));
        most = std::max(most, value.in(unit));
    };
    for (const CalibrationPicture::Point& point : picture.points) {
        right = std::max(right, point.reference.in(unit));
        take(point.error);
    }
    for (const CalibrationPicture::CurvePoint& point : picture.curve) {
        take(point.low95.value_or(point.error));
        take(point.high95.value_or(point.error));
    }
    hold(*m_across, 0.0, right);
    hold(*m_up, least, most);
}

void CalibrationChart::followPalette() {
    const Scheme scheme = schemeFor(palette());
    m_chart->setBackgroundBrush(scheme.panel);
    m_points->setBrush(scheme.panel);
    m_points->setPen(QPen(scheme.reading, 1.5));
    m_points->setMarkerSize(fontMetrics().height() * 0.6);
    m_curve->setPen(QPen(scheme.estimate, 2.0));
    m_band->setBrush(scheme.band);
    m_band->setPen(Qt::NoPen);
    for (QValueAxis* axis : {m_across, m_up}) {
        axis->setLabelsBrush(scheme.text);
        axis->setTitleBrush(scheme.text);
        axis->setLabelsFont(font());
        axis->setTitleFont(font());
        axis->setLinePen(QPen(scheme.line, 1.0));
        axis->setGridLinePen(QPen(scheme.grid, 1.0));
    }
}

void CalibrationChart::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        followPalette();
    }
}

QSize CalibrationChart::sizeHint() const {
    const int line = fontMetrics().height();
    return {line * 24, line * 14};
}

QSize CalibrationChart::minimumSizeHint() const {
    const int line = fontMetrics().height();
    return {line * 16, line * 13};
}

} // namespace coilbook
