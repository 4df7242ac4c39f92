#include "ui/charts/loss_chart_look.h"

namespace coilbook {

LossChartLook lossChartLook(const Scheme& scheme, double lineHeight, bool enlarged,
                            bool provisional) {
    LossChartLook look;
    look.ringSize = lineHeight * (enlarged ? 0.65 : 0.42);
    look.dotSize = lineHeight * (enlarged ? 0.35 : 0.26);
    look.ring = QPen(scheme.reading, enlarged ? 1.5 : 1.0);
    look.estimate = QPen(scheme.estimate, enlarged ? 2.5 : 1.8);
    if (provisional) {
        look.estimate.setCapStyle(Qt::FlatCap);
        look.estimate.setDashPattern({1.2, 1.2});
    }
    look.projection = QPen(scheme.estimate, enlarged ? 2.0 : 1.5);
    look.projection.setDashPattern({4.0, 3.0});
    look.band = provisional ? scheme.provisionalBand : scheme.band;
    return look;
}

} // namespace coilbook
