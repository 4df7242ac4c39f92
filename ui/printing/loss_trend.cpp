#include "ui/printing/loss_trend.h"

#include <QPolygonF>

#include <algorithm>

namespace coilbook {

namespace {

constexpr double kPoint = mm(0.62); ///< radius of a reading
constexpr double kDot = mm(0.4);    ///< of a corrected one
constexpr double kArrow = mm(1.6);
constexpr double kTick = mm(0.7);
constexpr double kMark = mm(1.1); ///< height of a mark on the race axis

class TrendDrawing {
public:
    TrendDrawing(PaperCanvas& canvas, const QRectF& area, const LossChart& chart,
                 const LossChartRange& range)
        : m_canvas(canvas)
        , m_painter(canvas.painter())
        , m_scheme(canvas.scheme())
        , m_area(area)
        , m_plot(area.adjusted(kPoint, kPoint, -kPoint, -kPoint))
        , m_chart(chart)
        , m_range(range) {}

    void draw() {
        m_painter.save();
        m_painter.setClipRect(m_area, Qt::IntersectClip);
        drawBand(m_chart.estimate);
        drawBand(m_chart.projection);
        drawAxes();
        drawMean(m_chart.estimate, m_chart.provisional ? Qt::DotLine : Qt::SolidLine);
        drawMean(m_chart.projection, Qt::DashLine);
        drawMarks();
        drawReadings();
        m_painter.restore();
    }

private:
    [[nodiscard]] QPointF at(double races, Force loss) const {
        const double span = std::max(m_range.lastRace - m_range.firstRace, 1e-9);
        const double depth = std::max(
            m_range.most / Force::poundsForce(1.0) - m_range.least / Force::poundsForce(1.0), 1e-9);
        return {m_plot.left() + m_plot.width() * (races - m_range.firstRace) / span,
                m_plot.top() + m_plot.height() * (loss - m_range.least).inPoundsForce() / depth};
    }

    void drawBand(const std::vector<LossChart::BandPoint>& points) {
        QPolygonF band;
        for (const auto& point : points) {
            band << at(point.races, point.low90);
        }
        for (auto point = points.rbegin(); point != points.rend(); ++point) {
            band << at(point->races, point->high90);
        }
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(m_chart.provisional ? m_scheme.provisionalBand : m_scheme.band);
        m_painter.drawPolygon(band);
        m_painter.setBrush(Qt::NoBrush);
    }

    void drawAxes() {
        const double zero = at(m_range.firstRace, Force()).y();
        m_canvas.line({m_area.left(), zero}, {m_area.right(), zero});
        m_canvas.line(m_area.topLeft(), m_area.bottomLeft());
        drawTicks(zero);
        const double limit = at(m_range.firstRace, m_chart.limit).y();
        m_canvas.line({m_area.left(), limit}, {m_area.right(), limit}, mm(0.45));
    }

    /// Short strokes at the round values: races on the line of no loss, forces at the left edge.
    void drawTicks(double zero) {
        if (m_range.raceTick > 0.0) {
            for (double race = m_range.firstRace; race <= m_range.lastRace;
                 race += m_range.raceTick) {
                const double x = at(race, Force()).x();
                m_canvas.line({x, zero - kTick}, {x, zero});
            }
        }
        if (m_range.tick > Force()) {
            for (Force loss = m_range.least; loss <= m_range.most; loss = loss + m_range.tick) {
                const double y = at(m_range.firstRace, loss).y();
                m_canvas.line({m_area.left(), y}, {m_area.left() + kTick, y});
            }
        }
    }

    void drawMean(const std::vector<LossChart::BandPoint>& points, Qt::PenStyle style) {
        QPolygonF mean;
        for (const auto& point : points) {
            mean << at(point.races, point.mean);
        }
        m_painter.setPen(QPen(m_scheme.estimate, mm(0.4), style, Qt::FlatCap));
        m_painter.drawPolyline(mean);
    }

    void drawMarks() {
        for (const LossChart::Mark& mark : m_chart.marks) {
            const QPointF top(at(mark.races, Force()).x(), m_area.top());
            switch (mark.kind) {
            case LossChart::Mark::Kind::OverRev:
                m_canvas.line(top, top + QPointF(0, 1.6 * kMark), mm(0.5));
                break;
            case LossChart::Mark::Kind::Running:
                m_canvas.line(top, top + QPointF(0, 1.6 * kMark), kHairline);
                break;
            case LossChart::Mark::Kind::LevelChange:
                fill(QPolygonF(QRectF(top.x() - 0.5 * kMark, top.y(), kMark, kMark)));
                break;
            case LossChart::Mark::Kind::Swap:
                fill(QPolygonF{top + QPointF(-0.6 * kMark, 0), top + QPointF(0.6 * kMark, 0),
                               top + QPointF(0, kMark)});
                break;
            }
        }
    }

    void fill(const QPolygonF& shape) {
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(m_scheme.line);
        m_painter.drawPolygon(shape);
        m_painter.setBrush(Qt::NoBrush);
    }

    /// A ring where a reading was read, a dot where it stands without its inspection's shift.
    void drawReadings() {
        for (const LossChart::Point& point : m_chart.readings) {
            const QPointF where = at(point.races, point.loss);
            m_painter.setPen(QPen(m_scheme.reading, kHairline));
            m_painter.setBrush(m_scheme.panel);
            m_painter.drawEllipse(where, kPoint, kPoint);
            m_painter.setBrush(m_scheme.reading);
            if (point.corrected && !point.isSetAside()) {
                m_painter.setPen(Qt::NoPen);
                m_painter.drawEllipse(at(point.races, *point.corrected), kDot, kDot);
            }
            m_painter.setBrush(Qt::NoBrush);
            if (point.event) {
                drawEvent(where, point);
            }
        }
    }

    /// A cross over what was set aside; an arrow that falls on a drop, with a question mark while
    /// nobody has tested again.
    void drawEvent(const QPointF& where, const LossChart::Point& point) {
        m_painter.setPen(QPen(m_scheme.reading, kHairline));
        if (point.isSetAside()) {
            const QPointF arm(1.5 * kPoint, 1.5 * kPoint);
            const QPointF other(arm.x(), -arm.y());
            m_painter.drawLine(where - arm, where + arm);
            m_painter.drawLine(where - other, where + other);
            return;
        }
        const QPointF tip = where - QPointF(0.0, 1.3 * kPoint);
        m_painter.drawLine(tip - QPointF(0.0, kArrow), tip);
        m_painter.drawLine(tip, tip + QPointF(-0.4 * kArrow, -0.5 * kArrow));
        m_painter.drawLine(tip, tip + QPointF(0.4 * kArrow, -0.5 * kArrow));
        if (point.event->kind == EventFinding::Kind::PendingDrop) {
            const double size = PaperCanvas::lineHeight(kSmallPrint);
            m_canvas.text(QRectF(tip.x() - size, tip.y() - size, size - 0.5 * kArrow, size),
                          QStringLiteral("?"),
                          {kSmallPrint, QFont::Bold, Qt::AlignRight | Qt::AlignVCenter});
        }
    }

    PaperCanvas& m_canvas;
    QPainter& m_painter;
    const Scheme& m_scheme;
    QRectF m_area;
    QRectF m_plot;
    const LossChart& m_chart;
    const LossChartRange& m_range;
};

} // namespace

void drawLossTrend(PaperCanvas& canvas, const QRectF& area, const LossChart& chart,
                   const LossChartRange& range) {
    TrendDrawing(canvas, area, chart, range).draw();
}

} // namespace coilbook
