#pragma once

#include "ui/drawing/scheme.h"

#include <QColor>
#include <QPen>

namespace coilbook {

/// Pens and sizes of what a chart and its key draw alike, in the painter's units. A reading is a
/// ring where it was read and a dot where it stands without its inspection's shift.
struct LossChartLook {
    double ringSize = 0.0; ///< diameters
    double dotSize = 0.0;
    QPen ring;
    QPen estimate;   ///< dotted while provisional
    QPen projection; ///< dashed
    QColor band;     ///< paler while provisional
};

/// `lineHeight`: of the chart's font.
[[nodiscard]] LossChartLook lossChartLook(const Scheme& scheme, double lineHeight, bool enlarged,
                                          bool provisional);

} // namespace coilbook
