#pragma once

#include "core/testers/calibration_picture.h"
#include "core/wording/quantities.h"

#include <QWidget>

class QAreaSeries;
class QChart;
class QChartView;
class QLineSeries;
class QScatterSeries;
class QValueAxis;

namespace coilbook {

/// How much a tester shows too much along its range: the points of its calibration, the curve
/// through them, and the band within which one further reading is expected.
class CalibrationChart : public QWidget {
    Q_OBJECT
public:
    explicit CalibrationChart(QWidget* parent = nullptr);

    void show(const CalibrationPicture& picture, const Quantities& quantities);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void changeEvent(QEvent* event) override;

private:
    void followPalette();
    void setRanges(const CalibrationPicture& picture, ForceUnit unit);

    QChart* m_chart; ///< owned by the view
    QChartView* m_view;
    QScatterSeries* m_points;
    QLineSeries* m_curve;
    QLineSeries* m_low;
    QLineSeries* m_high;
    QAreaSeries* m_band;
    QValueAxis* m_across;
    QValueAxis* m_up;
};

} // namespace coilbook
