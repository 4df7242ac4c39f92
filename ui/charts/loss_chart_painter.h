#pragma once

#include "core/assessment/loss_chart.h"
#include "core/wording/quantities.h"
#include "ui/drawing/scheme.h"

#include <QRectF>

#include <memory>
#include <optional>

class QPainter;

namespace coilbook {

/// How much of a chart is drawn.
enum class ChartDetail {
    Small,   ///< one of many: no axes, only 0 and the limit are named; see paintRaceScale()
    Enlarged ///< axes with titles, the pressure on a second one, marks with their words
};

/// Draws charts of the loss since the baseline, one after the other, with one and the same Qt
/// Chart: sixteen of them cost less than a single chart view. The chart is laid out at the size at
/// which it is drawn.
class LossChartPainter {
public:
    LossChartPainter();
    ~LossChartPainter();
    LossChartPainter(const LossChartPainter&) = delete;
    LossChartPainter& operator=(const LossChartPainter&) = delete;

    /// Unit and locale of the numbers.
    void setQuantities(const Quantities& quantities);

    /// Draws into `area` with the painter's font. `current`: index of a reading to point out.
    void paint(QPainter& painter, const QRectF& area, const LossChart& chart,
               const LossChartRange& range, ChartDetail detail, const Scheme& scheme,
               std::optional<std::size_t> current = {});

    /// The scale of races that the small charts above it share; `area` as wide as theirs.
    void paintRaceScale(QPainter& painter, const QRectF& area, const LossChartRange& range,
                        const Scheme& scheme) const;

    /// Where paint() draws the data within `area`.
    [[nodiscard]] QRectF plotArea(const QRectF& area, ChartDetail detail, const QFont& font) const;

    /// Where paint() draws this loss after so many races.
    [[nodiscard]] static QPointF position(const QRectF& plot, const LossChartRange& range,
                                          double races, Force loss);

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
