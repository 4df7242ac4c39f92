#pragma once

#include "core/services/sheet_content.h"
#include "ui/printing/paper_canvas.h"

namespace coilbook {

/// Where the parts of one spring's cell go, relative to the cell's top left corner. What has no
/// room is a null rectangle: the trend gives way in narrow or low cells, never the numbers.
struct SpringCellLayout {
    QRectF place;
    QRectF mark;
    QRectF label;
    QRectF baseline;
    QRectF latest;
    QRectF loss;
    QRectF standing;
    QRectF note; ///< null: the notes stand behind the standing
    QRectF trend;
};

[[nodiscard]] SpringCellLayout layOutSpringCell(const QSizeF& cell, bool hasNotes);

/// What qualifies a standing: `by estimate, 5.2 lbf likely`, `test again before swapping`.
[[nodiscard]] QString springNotes(const SheetSpring& spring);

/// One spring in its place of the plan. A spring past the limit has a heavy frame.
void drawSpringCell(PaperCanvas& canvas, const QRectF& area, const SheetSpring& spring,
                    const LossChartRange& range);

/// Captions over a column of such cells, of which `firstCell` is the first.
void drawSpringCaptions(PaperCanvas& canvas, const QRectF& firstCell);

} // namespace coilbook
