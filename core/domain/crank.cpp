#include "core/domain/crank.h"

#include <cmath>

namespace coilbook {

namespace {

constexpr double kCycle = kCycleTenths / 10.0;

} // namespace

std::vector<double> firingIntervals(const EngineLayout& layout) {
    const std::size_t cylinders = layout.firingOrder.size();
    if (layout.firingIntervals.size() != cylinders) {
        return std::vector<double>(cylinders, kCycle / static_cast<double>(cylinders));
    }
    std::vector<double> intervals;
    for (const int tenths : layout.firingIntervals) {
        intervals.push_back(tenths / 10.0);
    }
    return intervals;
}

double firingAngle(const EngineLayout& layout, const Cylinder& cylinder) {
    const std::vector<double> intervals = firingIntervals(layout);
    double angle = 0.0;
    for (std::size_t i = 0; i < layout.firingOrder.size() && layout.firingOrder[i] != cylinder;
         ++i) {
        angle += intervals[i];
    }
    return std::fmod(angle, kCycle);
}

double turnBetween(const EngineLayout& layout, const Cylinder& from, const Cylinder& to) {
    const double turn = firingAngle(layout, to) - firingAngle(layout, from);
    return turn < 0.0 ? turn + kCycle : turn;
}

} // namespace coilbook
