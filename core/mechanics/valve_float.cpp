#include "core/mechanics/valve_float.h"

#include <cmath>

namespace coilbook::mechanics {

std::optional<double> floatSpeed(const FloatFigure& figure, Force openNow) {
    if (!(figure.rpm > 0.0) || !(figure.openPressure > Force()) || !(openNow > Force())) {
        return std::nullopt;
    }
    return figure.rpm * std::sqrt(openNow / figure.openPressure);
}

std::optional<FloatEstimate> floatEstimate(const FloatFigure& figure, const LossInterval& loss,
                                           Force lower) {
    const Force whole = figure.openPressure - lower;
    const std::optional<double> rpm = floatSpeed(figure, whole - loss.mean);
    const std::optional<double> low = floatSpeed(figure, whole - loss.high90);
    const std::optional<double> high = floatSpeed(figure, whole - loss.low90);
    if (!rpm || !low || !high) {
        return std::nullopt;
    }
    return FloatEstimate{*rpm, *low, *high};
}

} // namespace coilbook::mechanics
