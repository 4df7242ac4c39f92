#pragma once

#include "core/services/sheet_content_form.h"
#include "ui/preferences.h"

#include <QRectF>

class QPainter;

namespace coilbook {

/// Draws the blank round form onto one page, like paintSheet(): the engine's places in the plan's
/// order with boxes for the hits and a line for notes.
void paintRoundForm(QPainter& painter, const QRectF& device, Paper paper,
                    const RoundFormContent& content);

} // namespace coilbook
