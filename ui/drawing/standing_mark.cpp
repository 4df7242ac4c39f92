#include "ui/drawing/standing_mark.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace coilbook {

namespace {

// Parts of the area that the mark is drawn into.
constexpr double kLimitHeight = 0.68; ///< the line at 100 % of the limit
constexpr double kBarWidth = 0.62;
constexpr double kStroke = 0.1; ///< of the area's width
constexpr double kNotchDepth = 0.43;
constexpr double kLeastOverflow = 1.22; ///< so that "past" is seen whatever the measured loss
constexpr double kMostOverflow = 1.40;

struct Geometry {
    QRectF area;
    QRectF bar; ///< from nothing used to the limit
    double stroke;

    explicit Geometry(const QRectF& whole)
        : stroke(whole.width() * kStroke) {
        const double half = stroke / 2.0;
        area = whole.adjusted(half, half, -half, -half);
        bar = QRectF(area.center().x() - area.width() * kBarWidth / 2.0, area.top(),
                     area.width() * kBarWidth, area.height() * kLimitHeight);
    }

    [[nodiscard]] double level(double used) const {
        return std::min(bar.top() + bar.height() * used, area.bottom());
    }

    [[nodiscard]] QRectF filledTo(double used) const {
        return {bar.topLeft(), QPointF(bar.right(), level(used))};
    }

    void drawLimit(QPainter& painter) const {
        painter.drawLine(QPointF(area.left(), bar.bottom()), QPointF(area.right(), bar.bottom()));
    }
};

/// Slanting lines of our own: brush patterns are counted in device dots and vanish on paper.
void hatch(QPainter& painter, const QRectF& rect, double step) {
    painter.save();
    painter.setClipRect(rect, Qt::IntersectClip);
    for (double x = rect.left() - rect.height(); x < rect.right(); x += step) {
        painter.drawLine(QPointF(x, rect.bottom()),
                         QPointF(x + rect.height(), rect.bottom() - rect.height()));
    }
    painter.restore();
}

void drawPast(QPainter& painter, const Geometry& shape, double used) {
    const QRectF filled = shape.filledTo(std::clamp(used, kLeastOverflow, kMostOverflow));
    hatch(painter, filled, shape.stroke * 3.2);
    painter.drawRect(filled);
    shape.drawLimit(painter);
}

void drawDue(QPainter& painter, const Geometry& shape, double used, const QColor& colour) {
    // The bar is pinched from both sides just above the limit, so the notch shows at any fill.
    const QRectF& bar = shape.bar;
    const double depth = bar.width() * kNotchDepth;
    const double middle = bar.top() + bar.height() * 0.58;
    const double half = bar.height() * 0.34;
    QPainterPath outline(bar.topLeft());
    outline.lineTo(bar.topRight());
    outline.lineTo(bar.right(), middle - half);
    outline.lineTo(bar.right() - depth, middle);
    outline.lineTo(bar.right(), middle + half);
    outline.lineTo(bar.bottomRight());
    outline.lineTo(bar.bottomLeft());
    outline.lineTo(bar.left(), middle + half);
    outline.lineTo(bar.left() + depth, middle);
    outline.lineTo(bar.left(), middle - half);
    outline.closeSubpath();
    QPainterPath level;
    level.addRect(shape.filledTo(used));
    painter.fillPath(outline.intersected(level), colour);
    painter.drawPath(outline);
    shape.drawLimit(painter);
}

void drawSound(QPainter& painter, const Geometry& shape, double used, const QColor& colour) {
    painter.fillRect(shape.filledTo(used), colour);
    painter.drawRect(shape.bar);
    shape.drawLimit(painter);
}

void drawNoTrend(QPainter& painter, const Geometry& shape, QPen pen) {
    pen.setDashPattern({1.6, 2.0});
    painter.setPen(pen);
    painter.drawRect(shape.bar);
}

} // namespace

StandingMark standingMarkOf(const SpringAssessment& spring, const JudgingRules& rules) {
    StandingMark mark;
    mark.standing = spring.standing;
    if (spring.measuredLoss && rules.limit > Force()) {
        mark.used = *spring.measuredLoss / rules.limit;
    }
    return mark;
}

void drawStandingMark(QPainter& painter, const QRectF& area, const StandingMark& mark,
                      const Scheme& scheme) {
    const Geometry shape(area);
    const QColor colour = scheme.of(mark.standing);
    const QPen pen(colour, shape.stroke, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    // A gain since the baseline is drawn as nothing used; only "past" reaches beyond the limit.
    const double used = std::clamp(mark.used.value_or(0.0), 0.0, 1.0);

    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    switch (mark.standing) {
    case Standing::PastLimit:
        drawPast(painter, shape, mark.used.value_or(0.0));
        break;
    case Standing::Due:
        drawDue(painter, shape, used, colour);
        break;
    case Standing::Sound:
        drawSound(painter, shape, used, colour);
        break;
    case Standing::NoTrend:
        drawNoTrend(painter, shape, pen);
        break;
    }
    painter.restore();
}

} // namespace coilbook
