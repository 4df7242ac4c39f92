#pragma once

#include "ui/charts/loss_chart_painter.h"

#include <QWidget>

#include <optional>

namespace coilbook {

/// One spring's chart, enlarged. One of its readings may be in view: pointed at, or chosen by the
/// arrow keys; whoever shows the chart writes its exact values beside it.
class LossChartView : public QWidget {
    Q_OBJECT
public:
    explicit LossChartView(QWidget* parent = nullptr);

    /// Puts the newest reading in view.
    void setChart(const LossChart& chart, const LossChartRange& range,
                  const Quantities& quantities);

    [[nodiscard]] const LossChart& chart() const { return m_chart; }

    /// Index of the reading in view; empty when there is none.
    [[nodiscard]] std::optional<std::size_t> current() const { return m_current; }

    /// Puts a reading in view.
    void setCurrent(std::size_t index);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void currentChanged();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] std::optional<std::size_t> nearest(const QPointF& point) const;

    LossChartPainter m_painter;
    LossChart m_chart;
    LossChartRange m_range;
    std::optional<std::size_t> m_current;
};

} // namespace coilbook
