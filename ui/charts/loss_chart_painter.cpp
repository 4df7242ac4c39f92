#include "ui/charts/loss_chart_painter.h"

#include "ui/charts/loss_chart_key.h"
#include "ui/charts/loss_chart_look.h"
#include "ui/charts/loss_chart_overlay.h"
#include "ui/charts/loss_chart_series.h"

#include <QPainter>

namespace coilbook {

namespace {

/// Room around the data, in the painter's units.
struct Margins {
    double left;
    double top;
    double right;
    double bottom;
};

/// The range of a plot that is `reach` larger at its left, top and right, so that readings at the
/// very edge are drawn whole: Qt Charts cuts off what leaves the plot.
LossChartRange widened(LossChartRange range, const QRectF& plot, double reach) {
    const double races = (range.lastRace - range.firstRace) * reach / plot.width();
    range.least = range.least - (range.most - range.least) * (reach / plot.height());
    range.firstRace -= races;
    range.lastRace += races;
    return range;
}

} // namespace

class LossChartPainter::Private {
public:
    LossChartSeries series;
    Quantities quantities;

    [[nodiscard]] Margins margins(ChartDetail detail, const QFontMetricsF& metrics,
                                  double width) const {
        const double line = metrics.height();
        const double number =
            metrics.horizontalAdvance(quantities.force(Force::poundsForce(188.8)));
        if (detail == ChartDetail::Small) {
            return {metrics.horizontalAdvance(quantities.force(Force::poundsForce(88.8))) +
                        metrics.averageCharWidth() * 1.5,
                    line * 0.4, line * 0.4, line * 0.15};
        }
        const double axis = number + metrics.averageCharWidth() * 1.5 + line * 1.5;
        const double key = LossChartKey(metrics, width).height();
        return {axis, key + line * 0.8, axis, line * 3.0};
    }
};

LossChartPainter::LossChartPainter()
    : d(std::make_unique<Private>()) {}

LossChartPainter::~LossChartPainter() = default;

void LossChartPainter::setQuantities(const Quantities& quantities) {
    d->quantities = quantities;
}

QRectF LossChartPainter::plotArea(const QRectF& area, ChartDetail detail, const QFont& font) const {
    const Margins margins = d->margins(detail, QFontMetricsF(font), area.width());
    return area.adjusted(margins.left, margins.top, -margins.right, -margins.bottom);
}

QPointF LossChartPainter::position(const QRectF& plot, const LossChartRange& range, double races,
                                   Force loss) {
    const double across = (races - range.firstRace) / (range.lastRace - range.firstRace);
    const double down = (loss - range.least) / (range.most - range.least);
    return {plot.left() + across * plot.width(), plot.top() + down * plot.height()};
}

void LossChartPainter::paint(QPainter& painter, const QRectF& area, const LossChart& chart,
                             const LossChartRange& range, ChartDetail detail, const Scheme& scheme,
                             std::optional<std::size_t> current) {
    const QRectF plot = plotArea(area, detail, painter.font());
    if (plot.width() < 1.0 || plot.height() < 1.0) {
        return;
    }
    const bool enlarged = detail == ChartDetail::Enlarged;
    const QFontMetricsF metrics(painter.font());
    const double reach =
        lossChartLook(scheme, metrics.height(), enlarged, chart.provisional).ringSize / 2.0 + 1.0;
    d->series.setLook(scheme, painter.font(), enlarged, chart.provisional);
    d->series.setData(chart, widened(range, plot, reach), d->quantities.unit());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush); // Qt Charts would fill its lines with it
    d->series.render(painter, area, plot.adjusted(-reach, -reach, reach, 0.0));
    LossChartOverlay overlay(painter, plot, chart, range, d->quantities, scheme);
    if (enlarged) {
        overlay.nameLimitLine();
    }
    overlay.markRaces(enlarged);
    overlay.linkCorrections();
    overlay.markEvents(enlarged);
    if (enlarged) {
        LossChartKey(metrics, area.width())
            .paint(painter, area.topLeft(), scheme, chart.provisional);
        overlay.titleAxes(area);
    } else {
        overlay.nameZeroAndLimit();
    }
    if (current) {
        overlay.pointOut(*current);
    }
    painter.restore();
}

void LossChartPainter::paintRaceScale(QPainter& painter, const QRectF& area,
                                      const LossChartRange& range, const Scheme& scheme) const {
    const QRectF plot = plotArea(area, ChartDetail::Small, painter.font());
    if (plot.width() < 1.0) {
        return;
    }
    const QFontMetricsF metrics(painter.font());
    painter.setPen(scheme.mutedText);
    double step = range.raceTick;
    const double label = metrics.horizontalAdvance(QStringLiteral("888"));
    while (plot.width() * step / (range.lastRace - range.firstRace) < label) {
        step *= 2.0;
    }
    for (double races = range.firstRace; races <= range.lastRace; races += step) {
        const double x = position(plot, range, races, range.least).x();
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.top() + 3.0));
        painter.drawText(QRectF(x - 100.0, area.top() + 3.0, 200.0, metrics.height()),
                         Qt::AlignHCenter | Qt::AlignTop, QString::number(static_cast<int>(races)));
    }
}

} // namespace coilbook
