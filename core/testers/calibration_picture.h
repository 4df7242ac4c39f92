#pragma once

#include "core/domain/calibration.h"
#include "core/units/force.h"

#include <optional>
#include <vector>

namespace coilbook {

/// What a chart of a calibration shows: how much the tester shows too much, over the force.
struct CalibrationPicture {
    struct Point {
        Force reference;
        Force error;    ///< indication minus reference
        Force residual; ///< indication minus curve
    };

    struct CurvePoint {
        Force reference;
        Force error;
        std::optional<Force> low95; ///< within which one further reading is expected
        std::optional<Force> high95;
    };

    std::vector<Point> points;     ///< as in the table
    std::vector<CurvePoint> curve; ///< along the table's range; empty without a curve
    std::optional<Force> scatter;  ///< residual SD
    /// The repeated points leave the curve by clearly more than they scatter (F test, 1 %).
    bool curveDoesNotFit = false;
};

[[nodiscard]] CalibrationPicture pictureOf(const Calibration& calibration);

} // namespace coilbook
