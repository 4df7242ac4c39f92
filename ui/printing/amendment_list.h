#pragma once

#include "core/services/sheet_content.h"
#include "ui/printing/paper_canvas.h"

namespace coilbook {

/// Height that the list takes with all amendments on it.
[[nodiscard]] double amendmentListHeight(const SheetContent& content);
/// Height with one amendment and the line that counts the others: the least that makes sense.
[[nodiscard]] double leastAmendmentListHeight(const SheetContent& content);

/// The amendments since the previous inspection, as many as `area` has room for; the rest is
/// counted in a last line. The old value is struck through.
void drawAmendmentList(PaperCanvas& canvas, const QRectF& area, const SheetContent& content);

} // namespace coilbook
