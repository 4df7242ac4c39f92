#pragma once

#include "core/assessment/loss_chart.h"
#include "core/wording/quantities.h"
#include "ui/drawing/scheme.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPointF>
#include <QRectF>

class QPainter;

namespace coilbook {

/// Draws over one chart what Qt Charts has no series for: direct labels, marks on the race axis,
/// crosses and the ring around the reading in view. Refers to its arguments; lives for one
/// painting.
class LossChartOverlay {
    Q_DECLARE_TR_FUNCTIONS(LossChart)
public:
    LossChartOverlay(QPainter& painter, const QRectF& plot, const LossChart& chart,
                     const LossChartRange& range, const Quantities& quantities,
                     const Scheme& scheme);

    /// 0 and the limit, left of the data.
    void nameZeroAndLimit();
    void nameLimitLine();
    /// Swaps and over-revved races, on request with their words.
    void markRaces(bool withWords);
    void crossOutSetAside();
    void pointOut(std::size_t reading);
    void titleAxes(const QRectF& area);

private:
    [[nodiscard]] QPointF at(double races, Force loss) const;
    void nameLevel(Force level, const QColor& colour);
    [[nodiscard]] double markSize() const;
    void drawOverRev(double x);
    void drawSwap(double x);
    void nameMark(const LossChart::Mark& mark, double x);
    void writeUpright(const QPointF& centre, const QString& text);

    QPainter& m_painter;
    QRectF m_plot;
    const LossChart& m_chart;
    const LossChartRange& m_range;
    const Quantities& m_quantities;
    const Scheme& m_scheme;
    QFontMetricsF m_metrics;
};

} // namespace coilbook
