#pragma once

#include "core/domain/engine_layout.h"

#include <optional>
#include <vector>

namespace coilbook {

/// The crank of a four-stroke engine: each cylinder fires once in two turns, 720°. A valve spring
/// can be tested only with its valve closed and its rocker loose or on the base circle; at top dead
/// centre of its power stroke a cylinder has both valves closed. Angles in degrees of crank, in
/// the engine's direction of rotation.

/// From each firing to the next, in firing order: as the engine states them, else 720°/n.
[[nodiscard]] std::vector<double> firingIntervals(const EngineLayout& layout);

/// Where the crank stands when `cylinder` is at top dead centre of its power stroke, counted from
/// the first of the firing order: 0 to below 720. Precondition: the layout is checked and has it.
[[nodiscard]] double firingAngle(const EngineLayout& layout, const Cylinder& cylinder);

/// How far the crank is turned on from the one cylinder's firing to the other's: 0 to below 720.
[[nodiscard]] double turnBetween(const EngineLayout& layout, const Cylinder& from,
                                 const Cylinder& to);

} // namespace coilbook
