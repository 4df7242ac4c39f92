#include "ui/charts/loss_chart_overlay.h"

#include "ui/charts/loss_chart_painter.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

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
    , m_metrics(painter.fontMetrics()) {
    const double ring = m_metrics.height() * 0.7;
    for (const LossChart::Point& point : chart.readings) {
        QRectF read(0.0, 0.0, ring, ring);
        read.moveCenter(at(point.races, point.loss));
        m_taken.push_back(read);
    }
}

void LossChartOverlay::nameZeroAndLimit() {
    m_painter.setPen(QPen(m_scheme.line, 1.0));
    m_painter.drawLine(m_plot.bottomLeft(), m_plot.bottomRight());
    m_painter.setPen(QPen(m_scheme.grid, 1.0));
    m_painter.drawLine(at(m_range.firstRace, Force()), at(m_range.lastRace, Force()));
    nameLevel(Force(), m_scheme.mutedText);
    nameLevel(m_chart.limit, m_scheme.text);
}

/// On the line at its left end, or at its right end where readings stand there.
void LossChartOverlay::nameLimitLine() {
    const QString text = tr("limit %1").arg(m_quantities.forceWithUnit(m_chart.limit));
    const double inset = m_metrics.averageCharWidth();
    const double width = m_metrics.horizontalAdvance(text);
    const double top = at(m_range.firstRace, m_chart.limit).y() - m_metrics.height() - 1.0;
    const QRectF left(m_plot.left() + inset, top, width, m_metrics.height());
    const QRectF right(m_plot.right() - inset - width, top, width, m_metrics.height());
    const QRectF& room = isFree(left) || !isFree(right) ? left : right;
    m_taken.push_back(room);
    m_painter.setPen(m_scheme.text);
    m_painter.drawText(QPointF(room.left(), room.top() + m_metrics.ascent()), text);
}

bool LossChartOverlay::isFree(const QRectF& room) const {
    return std::none_of(m_taken.begin(), m_taken.end(),
                        [&](const QRectF& other) { return other.intersects(room); });
}

void LossChartOverlay::markRaces(bool withWords) {
    for (const LossChart::Mark& mark : m_chart.marks) {
        const double x = at(mark.races, Force()).x();
        const bool overRev = mark.kind == LossChart::Mark::Kind::OverRev;
        m_painter.setPen(QPen(overRev ? m_scheme.overRev : m_scheme.line, 1.0, Qt::DotLine));
        m_painter.drawLine(QPointF(x, m_plot.top()), QPointF(x, m_plot.bottom()));
        switch (mark.kind) {
        case LossChart::Mark::Kind::OverRev:
            drawOverRev(x);
            break;
        case LossChart::Mark::Kind::Swap:
            drawSwap(x);
            break;
        case LossChart::Mark::Kind::LevelChange:
            drawLevelChange(x);
            break;
        case LossChart::Mark::Kind::Running:
            drawRunning(x);
            break;
        }
        if (withWords) {
            nameMark(mark, x);
        }
    }
}

void LossChartOverlay::linkCorrections() {
    const double near = m_metrics.height() * 0.4; // less shows by itself
    m_painter.setPen(QPen(m_scheme.reading, 1.0));
    for (const LossChart::Point& point : m_chart.readings) {
        if (!point.corrected || point.isSetAside()) {
            continue;
        }
        const QPointF read = at(point.races, point.loss);
        const QPointF corrected = at(point.races, *point.corrected);
        const double apart = corrected.y() - read.y();
        if (std::abs(apart) > near) {
            m_painter.drawLine(read + QPointF(0.0, std::copysign(0.6 * near, apart)), corrected);
        }
    }
}

void LossChartOverlay::markEvents(bool withWords) {
    for (const LossChart::Point& point : m_chart.readings) {
        if (!point.event) {
            continue;
        }
        const QPointF centre = at(point.races, point.loss);
        if (point.isSetAside()) {
            crossOut(centre);
        } else {
            drawDrop(centre, point.event->kind == EventFinding::Kind::PendingDrop);
        }
        if (withWords) {
            nameEvent(centre, *point.event);
        }
    }
}

void LossChartOverlay::crossOut(const QPointF& centre) {
    const double arm = m_metrics.height() * 0.4;
    m_painter.setPen(QPen(m_scheme.text, 1.5));
    m_painter.drawLine(centre + QPointF(-arm, -arm), centre + QPointF(arm, arm));
    m_painter.drawLine(centre + QPointF(-arm, arm), centre + QPointF(arm, -arm));
}

/// An arrow that falls on the reading, with a question mark while nobody has tested again.
void LossChartOverlay::drawDrop(const QPointF& centre, bool pending) {
    const double size = m_metrics.height() * 0.35;
    const QPointF tip = centre - QPointF(0.0, 1.5 * size);
    m_painter.setPen(QPen(m_scheme.text, 1.5));
    m_painter.drawLine(tip - QPointF(0.0, 2.2 * size), tip);
    m_painter.drawLine(tip, tip + QPointF(-0.7 * size, -0.9 * size));
    m_painter.drawLine(tip, tip + QPointF(0.7 * size, -0.9 * size));
    if (pending) {
        const QString mark = QStringLiteral("?");
        const QFont plain = m_painter.font();
        QFont bold = plain;
        bold.setBold(true);
        m_painter.setFont(bold);
        m_painter.drawText(tip + QPointF(-size - QFontMetricsF(bold).horizontalAdvance(mark),
                                         0.4 * m_metrics.ascent() - size),
                           mark);
        m_painter.setFont(plain);
    }
}

void LossChartOverlay::nameEvent(const QPointF& centre, const EventFinding& event) {
    QString text;
    switch (event.kind) {
    case EventFinding::Kind::Misread:
        text = tr("set aside");
        break;
    case EventFinding::Kind::Drop:
        text = tr("dropped");
        break;
    case EventFinding::Kind::PendingDrop:
        text = tr("dropped? test again");
        break;
    }
    const double width = m_metrics.horizontalAdvance(text);
    const double gap = m_metrics.height() * 0.7;
    const bool fitsRight = centre.x() + gap + width <= m_plot.right();
    write({fitsRight ? centre.x() + gap : centre.x() - gap - width,
           centre.y() - m_metrics.height() * 0.5},
          text);
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

/// A filled square on the race axis.
void LossChartOverlay::drawLevelChange(double x) {
    const double size = markSize();
    m_painter.fillRect(QRectF(x - 0.8 * size, m_plot.bottom() - 1.6 * size, 1.6 * size, 1.6 * size),
                       m_scheme.text);
}

/// A short bar that stands on the race axis.
void LossChartOverlay::drawRunning(double x) {
    m_painter.setPen(QPen(m_scheme.text, 2.0));
    m_painter.drawLine(QPointF(x, m_plot.bottom() - 2.0 * markSize()), QPointF(x, m_plot.bottom()));
}

QString LossChartOverlay::wordsOf(const LossChart::Mark& mark) const {
    const bool bare = mark.text.isEmpty();
    switch (mark.kind) {
    case LossChart::Mark::Kind::OverRev:
        return bare ? tr("over-rev") : tr("over-rev, %1 rpm").arg(mark.text);
    case LossChart::Mark::Kind::Swap:
        return bare ? tr("swap") : tr("%1 put in").arg(mark.text);
    case LossChart::Mark::Kind::LevelChange:
        return bare ? tr("work at the spring") : tr("work: %1").arg(mark.text);
    case LossChart::Mark::Kind::Running:
        return bare ? tr("other running") : tr("running: %1").arg(mark.text);
    }
    Q_UNREACHABLE();
}

void LossChartOverlay::nameMark(const LossChart::Mark& mark, double x) {
    const QString text = m_metrics.elidedText(wordsOf(mark), Qt::ElideRight, m_plot.width() * 0.6);
    const double width = m_metrics.horizontalAdvance(text);
    const double gap = m_metrics.averageCharWidth();
    const bool fitsRight = x + gap + width <= m_plot.right();
    write({fitsRight ? x + gap : x - gap - width, m_plot.bottom() - m_metrics.height() - 2.0},
          text);
}

/// Moves up until it stands on no reading and no other words; at the top it stays where it was.
void LossChartOverlay::write(const QPointF& topLeft, const QString& text) {
    QRectF room(topLeft, QSizeF(m_metrics.horizontalAdvance(text), m_metrics.height()));
    const QRectF wanted = room;
    while (!isFree(room) && room.top() > m_plot.top()) {
        room.translate(0.0, -0.5 * m_metrics.height());
    }
    if (room.top() < m_plot.top()) {
        room = wanted;
    }
    m_taken.push_back(room);
    m_painter.setPen(m_scheme.text);
    m_painter.drawText(QPointF(room.left(), room.top() + m_metrics.ascent()), text);
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
