#pragma once

#include "core/units/force.h"

#include <optional>

namespace coilbook::mechanics {

/// The engine builder's figure: where float starts with new springs, and what they push with at
/// full lift then.
struct FloatFigure {
    double rpm = 0.0;
    Force openPressure;
};

/// Engine speeds at which a valve begins to float, as estimated.
struct FloatEstimate {
    double rpm = 0.0;
    double low90 = 0.0;
    double high90 = 0.0;
};

/// Newton's second law, no source: what the valve train asks of a spring grows with the square of
/// the engine speed, so that the speed which a force can still hold goes with its square root:
/// rpm × √(force now / force new). Nothing unless both are above 0.
[[nodiscard]] std::optional<double> floatSpeed(const FloatFigure& figure, Force openNow);

/// The same for a spring that has lost `loss` (estimate and its 90 % interval) since new and stands
/// `lower` below the pressure of the nominal height. The root is monotone: the bounds of the loss
/// become the bounds of the speed. Nothing where a force would not be above 0.
struct LossInterval {
    Force mean;
    Force low90;
    Force high90;
};

[[nodiscard]] std::optional<FloatEstimate> floatEstimate(const FloatFigure& figure,
                                                         const LossInterval& loss, Force lower);

} // namespace coilbook::mechanics
