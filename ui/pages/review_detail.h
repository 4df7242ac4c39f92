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

class ReviewDecisions;

/// One spring enlarged: its chart, the exact values of the reading in view, what the user may say
/// about it, and all that was ever written of it, amended forms struck through with who, when and
/// why. The reading in view and the chosen row go together.
class ReviewDetail : public QWidget {
    Q_OBJECT
public:
    explicit ReviewDetail(QWidget* parent = nullptr);

    void showSpring(const EngineLog& log, const LossChart& chart, const LossChartRange& range,
                    const Quantities& quantities);

    [[nodiscard]] LossChartView& chart() const { return *m_chart; }

    [[nodiscard]] ReviewDecisions& decisions() const { return *m_decisions; }

    /// The line with the exact values of the reading in view.
    [[nodiscard]] QString values() const;

    [[nodiscard]] const QTreeWidget& trail() const { return *m_trail; }

Q_SIGNALS:
    /// The user has something to say about the spring's readings in an inspection.
    void decided(const coilbook::InspectionId& inspection, const coilbook::SpringId& spring,
                 coilbook::ReadingJudgement judgement);

private:
    void showReading();
    void writeValues();
    void offerDecisions();
    void showInTrail();
    void onTrailRow();
    [[nodiscard]] QStringList findings(const LossChart::Point& reading) const;
    void fillTrail(const std::vector<TrailEntry>& entries);

    LossChartView* m_chart;
    QLabel* m_values;
    ReviewDecisions* m_decisions;
    QTreeWidget* m_trail;
    std::vector<Decision> m_said;
    Quantities m_quantities;
};

} // namespace coilbook
