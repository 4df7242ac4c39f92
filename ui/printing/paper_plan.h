#pragma once

#include "ui/printing/paper_canvas.h"
#include "ui/widgets/engine_plan_layout.h"

namespace coilbook {

/// Room above each bank of the plan for its name and the captions of its columns.
constexpr double kPlanHeading = mm(8.6);

/// The engine plan inside `area`, in page coordinates. Cells grow no taller than `tallestCell`. A
/// single long bank is folded into two columns and more than three banks are gathered in two, so
/// that a cell always has room for its numbers.
[[nodiscard]] EnginePlanLayout layOutPaperPlan(const EngineLayout& engine, const QRectF& area,
                                               double tallestCell);

/// Height of that plan when its cells are `cellHeight` tall.
[[nodiscard]] double paperPlanHeight(const EngineLayout& engine, double cellHeight);

/// The arrow and its word that say where the front is, and the names of the banks.
void drawPlanHeadings(PaperCanvas& canvas, const EnginePlanLayout& plan);

} // namespace coilbook
