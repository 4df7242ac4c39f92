#include "ui/charts/loss_chart_overlay.h"

#include "ui/charts/loss_chart_painter.h"

#include <QPainter>

#include <algorithm>

namespace coilbook {

LossChartOverlay::LossChartOverlay(QPainter& painter, const QRectF& plot, const LossChart& chart,
                                   const LossChartRange& range, const Quantities& quantities,
                                   const Scheme& scheme)
    : m_painter(painter)
    , m_plot(plot)
    , m_chart(chart)
    , m_range(range)
    , m_quantities(quantities)
    , m_scheme(scheme)
    , m_metrics(painter.fontMetrics()) {}

void LossChartOverlay::nameZeroAndLimit() {
    m_painter.setPen(QPen(m_scheme.line, 1.0));
    m_painter.drawLine(m_plot.bottomLeft(), m_plot.bottomRight());
    m_painter.setPen(QPen(m_scheme.grid, 1.0));
    m_painter.drawLine(at(m_range.firstRace, Force()), at(m_range.lastRace, Force()));
    nameLevel(Force(), m_scheme.mutedText);
    nameLevel(m_chart.limit, m_scheme.text);
}

void LossChartOverlay::nameLimitLine() {
    const QString text = tr("limit %1").arg(m_quantities.forceWithUnit(m_chart.limit));
    const QPointF line = at(m_range.firstRace, m_chart.limit);
    m_painter.setPen(m_scheme.text);
    m_painter.drawText(
        QPointF(line.x() + m_metrics.averageCharWidth(), line.y() - m_metrics.descent() - 1.0),
        text);
}

void LossChartOverlay::markRaces(bool withWords) {
    for (const LossChart::Mark& mark : m_chart.marks) {
        const double x = at(mark.races, Force()).x();
        const bool overRev = mark.kind == LossChart::Mark::Kind::OverRev;
        m_painter.setPen(QPen(overRev ? m_scheme.overRev : m_scheme.line, 1.0, Qt::DotLine));
        m_painter.drawLine(QPointF(x, m_plot.top()), QPointF(x, m_plot.bottom()));
        overRev ? drawOverRev(x) : drawSwap(x);
        if (withWords) {
            nameMark(mark, x);
        }
    }
}

void LossChartOverlay::crossOutSetAside() {
    const double arm = m_metrics.height() * 0.3;
    m_painter.setPen(QPen(m_scheme.text, 1.3));
    for (const LossChart::Point& point : m_chart.readings) {
        if (point.setAside) {
            const QPointF centre = at(point.races, point.loss);
            m_painter.drawLine(centre + QPointF(-arm, -arm), centre + QPointF(arm, arm));
            m_painter.drawLine(centre + QPointF(-arm, arm), centre + QPointF(arm, -arm));
        }
    }
}

void LossChartOverlay::pointOut(std::size_t index) {
    if (index >= m_chart.readings.size()) {
        return;
    }
    const LossChart::Point& point = m_chart.readings[index];
    const QPointF centre = at(point.races, point.loss);
    m_painter.setPen(QPen(m_scheme.accent, 1.0));
    m_painter.drawLine(QPointF(centre.x(), m_plot.top()), QPointF(centre.x(), m_plot.bottom()));
    m_painter.setPen(QPen(m_scheme.accent, 2.5));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawEllipse(centre, m_metrics.height() * 0.45, m_metrics.height() * 0.45);
}

QPointF LossChartOverlay::at(double races, Force loss) const {
    return LossChartPainter::position(m_plot, m_range, races, loss);
}

void LossChartOverlay::nameLevel(Force level, const QColor& colour) {
    const QString text = level == Force() ? QStringLiteral("0") : m_quantities.force(level);
    const double y = at(m_range.firstRace, level).y();
    m_painter.setPen(colour);
    m_painter.drawText(QRectF(m_plot.left() - m_plot.width(), y - m_metrics.height(),
                              m_plot.width() - m_metrics.averageCharWidth(),
                              m_metrics.height() * 2.0),
                       Qt::AlignRight | Qt::AlignVCenter, text);
}

/// Half the width of a mark on the race axis: readable, and small beside the data.
double LossChartOverlay::markSize() const {
    return std::min(m_metrics.height() * 0.3, m_plot.height() * 0.1);
}

/// A filled triangle that stands on the race axis.
void LossChartOverlay::drawOverRev(double x) {
    const double size = markSize();
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(m_scheme.overRev);
    m_painter.drawPolygon(QPolygonF({{x, m_plot.bottom() - 2.0 * size},
                                     {x + size, m_plot.bottom()},
                                     {x - size, m_plot.bottom()}}));
}

/// A hollow diamond on the race axis.
void LossChartOverlay::drawSwap(double x) {
    const double size = markSize();
    m_painter.setPen(QPen(m_scheme.text, 1.2));
    m_painter.setBrush(m_scheme.panel);
    m_painter.drawPolygon(QPolygonF({{x, m_plot.bottom() - 2.0 * size},
                                     {x + size, m_plot.bottom() - size},
                                     {x, m_plot.bottom()},
                                     {x - size, m_plot.bottom() - size}}));
}

void LossChartOverlay::nameMark(const LossChart::Mark& mark, double x) {
    const bool overRev = mark.kind == LossChart::Mark::Kind::OverRev;
    QString text;
    if (overRev) {
        text = mark.text.isEmpty() ? tr("over-rev") : tr("over-rev, %1 rpm").arg(mark.text);
    } else {
        text = mark.text.isEmpty() ? tr("swap") : tr("%1 put in").arg(mark.text);
    }
    const double width = m_metrics.horizontalAdvance(text);
    const double gap = m_metrics.averageCharWidth();
    const bool fitsRight = x + gap + width <= m_plot.right();
    m_painter.setPen(m_scheme.text);
    m_painter.drawText(
        QPointF(fitsRight ? x + gap : x - gap - width, m_plot.bottom() - m_metrics.descent() - 2.0),
        text);
}

void LossChartOverlay::titleAxes(const QRectF& area) {
    const double half = m_metrics.height() * 0.5;
    m_painter.setPen(m_scheme.text);
    writeUpright(QPointF(area.left() + half, m_plot.center().y()),
                 tr("loss since the baseline, %1").arg(m_quantities.unitName()));
    if (m_chart.baseline) {
        writeUpright(QPointF(area.right() - half, m_plot.center().y()),
                     tr("seat pressure, %1").arg(m_quantities.unitName()));
    }
    m_painter.drawText(
        QRectF(m_plot.left(), area.bottom() - 2.5 * half, m_plot.width(), 2.0 * half),
        Qt::AlignCenter, tr("races that the engine has run"));
}

void LossChartOverlay::writeUpright(const QPointF& centre, const QString& text) {
    m_painter.save();
    m_painter.translate(centre);
    m_painter.rotate(-90.0);
    const double reach = m_metrics.horizontalAdvance(text);
    m_painter.drawText(QRectF(-reach, -m_metrics.height(), 2.0 * reach, 2.0 * m_metrics.height()),
                       Qt::AlignCenter, text);
    m_painter.restore();
}

} // namespace coilbook
