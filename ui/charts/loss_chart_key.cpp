#include "ui/charts/loss_chart_key.h"

#include "ui/charts/loss_chart_look.h"

#include <QPainter>

namespace coilbook {

LossChartKey::LossChartKey(const QFontMetricsF& metrics, double width)
    : m_metrics(metrics)
    , m_entries{Entry{Sign::Raw, tr("as read"), {}},
                Entry{Sign::Corrected, tr("shift taken out"), {}},
                Entry{Sign::Estimate, tr("estimate, likely range"), {}},
                Entry{Sign::Projection, tr("ahead"), {}}} {
    const double gap = m_metrics.averageCharWidth();
    double x = 0.0;
    for (Entry& entry : m_entries) {
        const double needed = signWidth() + gap + m_metrics.horizontalAdvance(entry.text);
        if (x > 0.0 && x + needed > width) {
            x = 0.0;
            ++m_lines;
        }
        entry.at = QPointF(x, (m_lines - 1) * m_metrics.height());
        x += needed + 2.5 * gap;
    }
}

double LossChartKey::height() const {
    return m_lines * m_metrics.height();
}

void LossChartKey::paint(QPainter& painter, const QPointF& topLeft, const Scheme& scheme,
                         bool provisional) const {
    const double line = m_metrics.height();
    for (const Entry& entry : m_entries) {
        const QRectF sign(topLeft + entry.at, QSizeF(signWidth(), line));
        paintSign(painter, sign, entry.sign, scheme, provisional);
        painter.setPen(scheme.text);
        painter.drawText(
            QPointF(sign.right() + m_metrics.averageCharWidth(), sign.top() + m_metrics.ascent()),
            entry.text);
    }
}

void LossChartKey::paintSign(QPainter& painter, const QRectF& area, Sign sign, const Scheme& scheme,
                             bool provisional) const {
    const LossChartLook look = lossChartLook(scheme, m_metrics.height(), true, provisional);
    const QPointF left(area.left(), area.center().y());
    const QPointF right(area.right(), area.center().y());
    switch (sign) {
    case Sign::Raw:
        painter.setPen(look.ring);
        painter.setBrush(scheme.panel);
        painter.drawEllipse(area.center(), look.ringSize / 2.0, look.ringSize / 2.0);
        break;
    case Sign::Corrected:
        painter.setPen(Qt::NoPen);
        painter.setBrush(scheme.reading);
        painter.drawEllipse(area.center(), look.dotSize / 2.0, look.dotSize / 2.0);
        break;
    case Sign::Estimate:
        painter.fillRect(area.adjusted(0.0, area.height() * 0.2, 0.0, -area.height() * 0.2),
                         look.band);
        painter.setPen(look.estimate);
        painter.drawLine(left, right);
        break;
    case Sign::Projection:
        painter.setPen(look.projection);
        painter.drawLine(left, right);
        break;
    }
}

} // namespace coilbook
