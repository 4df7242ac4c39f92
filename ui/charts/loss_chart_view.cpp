#include "ui/charts/loss_chart_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

/// Where the chart stands in the widget.
QRectF chartArea(const QWidget& widget) {
    const double inset = widget.fontMetrics().height() * 0.4;
    return QRectF(widget.rect()).adjusted(inset, inset, -inset, -inset);
}

} // namespace

LossChartView::LossChartView(QWidget* parent)
    : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Loss of seat pressure over the races"));
}

void LossChartView::setChart(const LossChart& chart, const LossChartRange& range,
                             const Quantities& quantities) {
    m_chart = chart;
    m_range = range;
    m_painter.setQuantities(quantities);
    m_current = chart.readings.empty() ? std::nullopt : std::optional(chart.readings.size() - 1);
    update();
    Q_EMIT currentChanged();
}

QSize LossChartView::sizeHint() const {
    return minimumSizeHint() * 2;
}

QSize LossChartView::minimumSizeHint() const {
    const QFontMetrics metrics = fontMetrics();
    return {metrics.averageCharWidth() * 40, metrics.height() * 8};
}

void LossChartView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setFont(font());
    const Scheme scheme = schemeFor(palette());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(hasFocus() ? scheme.accent : scheme.line, hasFocus() ? 2.0 : 1.0));
    painter.setBrush(scheme.panel);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1.0, 1.0, -1.0, -1.0), 4.0, 4.0);
    m_painter.paint(painter, chartArea(*this), m_chart, m_range, ChartDetail::Enlarged, scheme,
                    m_current);
}

void LossChartView::keyPressEvent(QKeyEvent* event) {
    if (!m_current) {
        QWidget::keyPressEvent(event);
        return;
    }
    const std::size_t last = m_chart.readings.size() - 1;
    switch (event->key()) {
    case Qt::Key_Left:
        setCurrent(*m_current == 0 ? 0 : *m_current - 1);
        break;
    case Qt::Key_Right:
        setCurrent(std::min(*m_current + 1, last));
        break;
    case Qt::Key_Home:
        setCurrent(0);
        break;
    case Qt::Key_End:
        setCurrent(last);
        break;
    default:
        QWidget::keyPressEvent(event);
    }
}

void LossChartView::mouseMoveEvent(QMouseEvent* event) {
    if (const std::optional<std::size_t> index = nearest(event->position())) {
        setCurrent(*index);
    }
}

void LossChartView::setCurrent(std::size_t index) {
    if (m_current == index) {
        return;
    }
    m_current = index;
    update();
    Q_EMIT currentChanged();
}

std::optional<std::size_t> LossChartView::nearest(const QPointF& point) const {
    const QRectF plot = m_painter.plotArea(chartArea(*this), ChartDetail::Enlarged, font());
    std::optional<std::size_t> best;
    double bestDistance = 0.0;
    for (std::size_t i = 0; i < m_chart.readings.size(); ++i) {
        const LossChart::Point& reading = m_chart.readings[i];
        const QPointF at = LossChartPainter::position(plot, m_range, reading.races, reading.loss);
        // Mostly along the race axis: the pointer need not hit the mark.
        const double distance = std::hypot(at.x() - point.x(), 0.25 * (at.y() - point.y()));
        if (!best || distance < bestDistance) {
            best = i;
            bestDistance = distance;
        }
    }
    return best;
}

} // namespace coilbook
