#pragma once

#include "core/assessment/loss_chart.h"
#include "ui/drawing/scheme.h"

#include <QFont>
#include <QGraphicsScene>
#include <QRectF>

class QAreaSeries;
class QChart;
class QLineSeries;
class QScatterSeries;
class QValueAxis;

namespace coilbook {

/// One Qt Chart in a scene of its own, filled anew for each spring and drawn where it is wanted.
/// All series exist once and are replaced as a whole; axis ranges are set, never guessed.
class LossChartSeries {
public:
    LossChartSeries();

    void setLook(const Scheme& scheme, const QFont& font, bool withAxes, bool provisional);
    void setData(const LossChart& chart, const LossChartRange& range, ForceUnit unit);
    void render(QPainter& painter, const QRectF& area, const QRectF& plot);

private:
    template <class Series>
    Series* add(Series* series);
    void setRanges(const LossChart& chart, const LossChartRange& range, ForceUnit unit);

    QGraphicsScene m_scene;
    QChart* m_chart; ///< owned by the scene
    QValueAxis* m_races;
    QValueAxis* m_loss;
    QValueAxis* m_pressure;
    QLineSeries* m_bandTop; ///< owned by m_band's chart
    QLineSeries* m_bandBottom;
    QAreaSeries* m_band;
    QLineSeries* m_limit;
    QLineSeries* m_projection;
    QLineSeries* m_estimate;
    QScatterSeries* m_raw;
    QScatterSeries* m_corrected;
};

} // namespace coilbook
