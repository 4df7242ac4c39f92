#include "ui/charts/survival_chart.h"

#include "core/assessment/loss_chart.h"
#include "core/wording/life_words.h"
#include "ui/drawing/scheme.h"

#include <QPainter>
#include <QPolygonF>

#include <algorithm>
#include <array>
#include <cmath>

namespace coilbook {

namespace {

using statistics::SurvivalCurve;
using statistics::SurvivalStep;

constexpr std::array kDashes{Qt::SolidLine, Qt::DashLine, Qt::DotLine, Qt::DashDotLine,
                             Qt::DashDotDotLine};

/// From races and shares to the widget.
struct Axes {
    QRectF plot;
    double races = 1.0;

    [[nodiscard]] QPointF at(double race, double share) const {
        return {plot.left() + plot.width() * race / races, plot.bottom() - plot.height() * share};
    }
};

/// Points of a step curve from (0, 1) on.
QPolygonF stepsOf(const SurvivalCurve& curve, double SurvivalStep::*value, const Axes& axes) {
    QPolygonF line{axes.at(0.0, 1.0)};
    double before = 1.0;
    for (const SurvivalStep& step : curve.steps) {
        line << axes.at(step.time, before) << axes.at(step.time, step.*value);
        before = step.*value;
    }
    return line;
}

} // namespace

SurvivalChart::SurvivalChart(QWidget* parent)
    : QWidget(parent) {
    setAccessibleName(tr("How long springs last"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void SurvivalChart::showGroups(const std::vector<LifeGroup>& groups, std::size_t chosen) {
    m_groups = groups;
    m_chosen = chosen;
    update();
}

QSize SurvivalChart::sizeHint() const {
    return {fontMetrics().averageCharWidth() * 60, fontMetrics().height() * 12};
}

double SurvivalChart::lastRace() const {
    double last = 1.0;
    for (const LifeGroup& group : m_groups) {
        if (group.curve && !group.curve->steps.empty()) {
            last = std::max(last, group.curve->steps.back().time);
        }
    }
    return last;
}

void SurvivalChart::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Scheme scheme = schemeFor(palette());
    const double line = fontMetrics().height();
    const double left = fontMetrics().horizontalAdvance(QStringLiteral("100 %")) + line;
    Axes axes;
    axes.plot = QRectF(left, line, std::max(10.0, width() - left - line),
                       std::max(10.0, height() - 3.5 * line));
    const double tick = std::max(1.0, roundTick(lastRace(), 8));
    axes.races = tick * std::ceil(lastRace() / tick);
    painter.fillRect(axes.plot, scheme.panel);
    for (int quarter = 0; quarter <= 4; ++quarter) {
        const QPointF from = axes.at(0.0, quarter / 4.0);
        painter.setPen(scheme.grid);
        painter.drawLine(from, axes.at(axes.races, quarter / 4.0));
        painter.setPen(scheme.text);
        painter.drawText(QRectF(0.0, from.y() - line / 2, left - line / 3, line),
                         Qt::AlignRight | Qt::AlignVCenter,
                         QStringLiteral("%1 %").arg(25 * quarter));
    }
    for (double race = 0.0; race <= axes.races; race += tick) {
        const QPointF at = axes.at(race, 0.0);
        painter.drawText(QRectF(at.x() - 3 * line, at.y() + line / 4, 6 * line, line),
                         Qt::AlignCenter, QString::number(race));
    }
    painter.drawText(QRectF(left, axes.plot.bottom() + 1.25 * line, axes.plot.width(), line),
                     Qt::AlignCenter, tr("races run; the curve: springs within the limit"));

    for (std::size_t g = 0; g < m_groups.size(); ++g) {
        if (!m_groups[g].curve) {
            continue;
        }
        const SurvivalCurve& curve = *m_groups[g].curve;
        if (g == m_chosen) {
            QPolygonF band = stepsOf(curve, &SurvivalStep::low, axes);
            const QPolygonF high = stepsOf(curve, &SurvivalStep::high, axes);
            std::for_each(high.crbegin(), high.crend(),
                          [&](const QPointF& point) { band << point; });
            painter.setPen(Qt::NoPen);
            painter.setBrush(scheme.band);
            painter.drawPolygon(band);
        }
    }
    painter.setBrush(Qt::NoBrush);
    for (std::size_t g = 0; g < m_groups.size(); ++g) {
        if (!m_groups[g].curve) {
            continue;
        }
        const SurvivalCurve& curve = *m_groups[g].curve;
        const QColor colour = g == m_chosen ? scheme.estimate : scheme.text;
        painter.setPen(QPen(colour, line / 8, kDashes.at(g % kDashes.size())));
        const QPolygonF steps = stepsOf(curve, &SurvivalStep::survival, axes);
        painter.drawPolyline(steps);
        painter.setPen(QPen(colour, line / 12));
        for (const SurvivalStep& step : curve.steps) {
            if (step.censored > 0) {
                const QPointF at = axes.at(step.time, step.survival);
                painter.drawLine(at - QPointF(0, line / 4), at + QPointF(0, line / 4));
            }
        }
        // The label stands under the end of its curve, each group a line lower.
        const QString name = wording::lifeGroup(m_groups[g]);
        const double wide = fontMetrics().horizontalAdvance(name) + line / 2;
        const double x = std::min(steps.last().x(), axes.plot.right() - wide);
        painter.drawText(QRectF(x, steps.last().y() - line * 1.2, wide, line),
                         Qt::AlignLeft | Qt::AlignVCenter, name);
    }
}

} // namespace coilbook
