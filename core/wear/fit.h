#pragma once

#include "core/wear/design.h"
#include "core/wear/nodes.h"
#include "core/wear/season.h"
#include "core/wear/solution.h"

#include <optional>
#include <vector>

namespace coilbook::wear {

struct FitOptions {
    bool events = true; ///< search for misreads and drops, beside those that the user has said
};

/// The fitted model: mode, events, and the solution at each node. Functions of `outputs.h` read
/// their figures from it.
struct Fit {
    HyperPrior prior;
    ModeState mode;
    EigenSystem axes;
    Design design; ///< with the events found
    std::vector<Node> nodes;
    std::vector<Solution> solutions; ///< per node, in the same order
    Solution atMode;
};

/// The full fit (sections 4 and 7); empty where no solution exists (section 9).
[[nodiscard]] std::optional<Fit> fitSeason(const Season& season, const FitOptions& options = {});

/// The same season with other data at the mode, axes and events of an earlier fit: the fast path of
/// section 10. Events are named by life and cell; one whose reading is gone, or that
/// the user has something else to say about, is left out. The mode
/// is not searched again: what this gives is exact for the nodes, which may be somewhat off centre
/// until the next full fit. Moving the earlier fit in saves its memory from being made anew.
[[nodiscard]] std::optional<Fit> refit(const Season& season, Fit earlier);

/// Solutions of another design at given hyperparameter nodes (session check, section 6); weights
/// stay those of `nodes`. Nodes without a solution are dropped.
[[nodiscard]] std::vector<std::pair<double, Solution>>
solveAt(const std::vector<Node>& nodes, const HyperPrior& prior, const Design& design);

} // namespace coilbook::wear
