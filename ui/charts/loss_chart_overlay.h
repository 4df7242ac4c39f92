#pragma once

#include "core/assessment/loss_chart.h"
#include "core/wording/quantities.h"
#include "ui/drawing/scheme.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPointF>
#include <QRectF>

#include <vector>

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
    /// A stroke from a reading to where it stands without its inspection's shift.
    void linkCorrections();
    /// Crosses, arrows and question marks at the readings that something befell.
    void markEvents(bool withWords);
    void pointOut(std::size_t reading);
    void titleAxes(const QRectF& area);

private:
    [[nodiscard]] QPointF at(double races, Force loss) const;
    void nameLevel(Force level, const QColor& colour);
    [[nodiscard]] double markSize() const;
    void drawOverRev(double x);
    void drawSwap(double x);
    void drawLevelChange(double x);
    void drawRunning(double x);
    [[nodiscard]] QString wordsOf(const LossChart::Mark& mark) const;
    void nameMark(const LossChart::Mark& mark, double x);
    void crossOut(const QPointF& centre);
    void drawDrop(const QPointF& centre, bool pending);
    void nameEvent(const QPointF& centre, const EventFinding& event);
    [[nodiscard]] bool isFree(const QRectF& room) const;
    void write(const QPointF& topLeft, const QString& text);
    void writeUpright(const QPointF& centre, const QString& text);

    QPainter& m_painter;
    QRectF m_plot;
    const LossChart& m_chart;
    const LossChartRange& m_range;
    const Quantities& m_quantities;
    const Scheme& m_scheme;
    QFontMetricsF m_metrics;
    std::vector<QRectF> m_taken; ///< by readings and words
};

} // namespace coilbook
