#pragma once

#include "ui/drawing/scheme.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QRectF>

#include <array>

class QPainter;

namespace coilbook {

/// The key above an enlarged chart: what rings, dots, lines and the band are. Takes as many lines
/// as its width needs.
class LossChartKey {
    Q_DECLARE_TR_FUNCTIONS(LossChart)
public:
    LossChartKey(const QFontMetricsF& metrics, double width);

    [[nodiscard]] double height() const;

    /// `provisional`: the estimate is drawn as one that rests on few inspections.
    void paint(QPainter& painter, const QPointF& topLeft, const Scheme& scheme,
               bool provisional) const;

private:
    enum class Sign { Raw, Corrected, Estimate, Projection };

    struct Entry {
        Sign sign = Sign::Raw;
        QString text;
        QPointF at; ///< its top left corner, from that of the key
    };

    void paintSign(QPainter& painter, const QRectF& area, Sign sign, const Scheme& scheme,
                   bool provisional) const;

    [[nodiscard]] double signWidth() const { return m_metrics.height() * 1.6; }

    QFontMetricsF m_metrics;
    std::array<Entry, 4> m_entries;
    int m_lines = 1;
};

} // namespace coilbook
