#pragma once

#include "core/assessment/loss_chart.h"
#include "ui/printing/paper_canvas.h"

namespace coilbook {

/// The small trend of one spring: loss downward from the top of `area`, races to the right, on the
/// range that all springs of the sheet share. A line across is the limit; hollow points are raw
/// readings, filled ones corrected, crossed ones set aside; a grey band is the estimate's 90 %, the
/// dashed line the races ahead; small triangles at the top are swaps, bars over-revved races.
void drawLossTrend(PaperCanvas& canvas, const QRectF& area, const LossChart& chart,
                   const LossChartRange& range);

} // namespace coilbook
