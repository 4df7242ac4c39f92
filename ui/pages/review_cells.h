#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/loss_chart.h"
#include "core/wording/quantities.h"
#include "ui/charts/loss_chart_painter.h"
#include "ui/widgets/engine_plan.h"

#include <map>
#include <memory>

namespace coilbook {

/// What stands in the cells of the plan at Review: standing mark, place, spring, loss and standing
/// in words, and the small chart. All charts share one range.
class ReviewCells {
public:
    void set(const EngineHistory& history, std::shared_ptr<const Assessment> assessment,
             const Quantities& quantities);
    void clear();

    void paint(QPainter& painter, const EnginePlan::Cell& cell, const Scheme& scheme);
    /// The scale of races under a bank.
    void paintScale(QPainter& painter, const QRectF& area, const Scheme& scheme);

    /// A place in one sentence, e.g. for a screen reader.
    [[nodiscard]] QString describe(const Place& place) const;

    /// Null: no spring there.
    [[nodiscard]] const LossChart* chartAt(const Place& place) const;
    [[nodiscard]] const SpringAssessment* springAt(const Place& place) const;

    [[nodiscard]] const LossChartRange& range() const { return m_range; }

private:
    struct Entry {
        std::size_t spring = 0; ///< index in the assessment
        LossChart chart;
    };

    void paintWords(QPainter& painter, const QRectF& area, const SpringAssessment& spring,
                    const Scheme& scheme) const;

    std::shared_ptr<const Assessment> m_assessment;
    std::map<Place, Entry> m_entries;
    LossChartRange m_range;
    Quantities m_quantities;
    LossChartPainter m_painter;
};

} // namespace coilbook
