#pragma once

#include "core/wear/mode_search.h"

#include <functional>
#include <vector>

namespace coilbook::wear {

/// One node of the integration over the hyperparameters.
struct Node {
    Eta eta;
    double weight = 0.0; ///< normalised: all weights of a rule sum to 1
};

/// The 27 points of a rule of degree 5 for a normal weight in five dimensions, placed by the mode
/// and the axes of the curvature there (section 4): the origin (2/7), ± sqrt 7 on each axis (1/49)
/// and (± 1, …) sqrt(7/5) with an even number of plus signs (25/784). `objective` is f(eta), asked
/// once for each node in their order. Nodes where it is infinite get weight 0; if it is so at all
/// of them the result is empty.
[[nodiscard]] std::vector<Node> nodesAround(const Eta& mode, const EigenSystem& axes,
                                            const std::function<double(const Eta&)>& objective);

} // namespace coilbook::wear
