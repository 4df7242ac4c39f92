#pragma once

#include "core/services/sheet_content.h"
#include "ui/preferences.h"

#include <QRectF>

class QPainter;

namespace coilbook {

/// Draws the spring sheet onto one page. `device` is the whole sheet of paper in the painter's
/// units: a printer or PDF writer in full-page mode, an image, or the area of a preview. Whatever
/// the content, it stays on that page and inside its margins.
void paintSheet(QPainter& painter, const QRectF& device, Paper paper, const SheetContent& content);

} // namespace coilbook
