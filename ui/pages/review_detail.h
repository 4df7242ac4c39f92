#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"
#include "core/services/reading_trail.h"
#include "core/wording/quantities.h"
#include "ui/charts/loss_chart_view.h"

#include <QWidget>

class QLabel;
class QTreeWidget;

namespace coilbook {

/// One spring enlarged: its chart, the exact values of the reading in view, and all that was ever
/// written of it, amended forms struck through with who, when and why.
class ReviewDetail : public QWidget {
    Q_OBJECT
public:
    explicit ReviewDetail(QWidget* parent = nullptr);

    void showSpring(const EngineLog& log, const LossChart& chart, const LossChartRange& range,
                    const QString& heading, const Quantities& quantities);

    [[nodiscard]] LossChartView& chart() const { return *m_chart; }

    /// The line with the exact values of the reading in view.
    [[nodiscard]] QString values() const;

    [[nodiscard]] const QTreeWidget& trail() const { return *m_trail; }

private:
    void writeValues();
    void fillTrail(const std::vector<TrailEntry>& entries);

    QLabel* m_heading;
    LossChartView* m_chart;
    QLabel* m_values;
    QTreeWidget* m_trail;
    Quantities m_quantities;
};

} // namespace coilbook
