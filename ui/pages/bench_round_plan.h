#pragma once

#include "core/services/round_verdict.h"
#include "core/wording/quantities.h"
#include "ui/widgets/engine_plan.h"

#include <map>

namespace coilbook {

/// The engine from above while a round goes over it: which spring is in work, which are done and
/// with what reading, which are still to do. Never takes the focus from the field.
class BenchRoundPlan : public EnginePlan {
    Q_OBJECT
public:
    explicit BenchRoundPlan(QWidget* parent = nullptr);

    void showRound(const Round& round, const EngineLayout& layout, Force limit,
                   const Quantities& quantities);

private:
    struct Cell {
        QString reading; ///< empty: still to do
        MeasuredStanding standing = MeasuredStanding::Baseline;
        std::optional<double> used;
    };

    void paintCell(QPainter& painter, const EnginePlan::Cell& cell, const Scheme& scheme) const;

    std::map<Place, Cell> m_cells;
};

} // namespace coilbook
