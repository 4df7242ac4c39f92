#pragma once

#include "core/services/plan_content.h"
#include "ui/preferences.h"

#include <QRectF>

class QPainter;

namespace coilbook {

/// As many races as have room beside the springs on paper; the others stay on screen.
inline constexpr std::size_t kMostPrintedRaces = 8;

/// Draws the swap plan onto one page, like paintSheet(): what it comes to, the springs with the
/// odds of each race, what the shelf needs, and what else is to be done.
void paintPlan(QPainter& painter, const QRectF& device, Paper paper, const PlanContent& content);

} // namespace coilbook
