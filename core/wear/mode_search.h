#pragma once

#include "core/wear/curvature.h"
#include "core/wear/design.h"
#include "core/wear/priors.h"
#include "core/wear/solution.h"

#include <limits>

namespace coilbook::wear {

/// f(eta) = |eta|²/2 - log m, to be made small (section 4); infinite where no solution exists.
class Objective {
public:
    Objective(const Design& design, const HyperPrior& prior)
        : m_design(design)
        , m_prior(prior) {}

    [[nodiscard]] double operator()(const Eta& eta);

private:
    const Design& m_design;
    const HyperPrior& m_prior;
    Solution m_workspace;
};

/// Where a search stands, so that a later one can go on from it.
struct ModeState {
    Eta eta = Eta::Zero();
    EtaMatrix a = EtaMatrix::Identity(); ///< curvature as the search keeps it
    double value = std::numeric_limits<double>::infinity();
    bool searched = false; ///< `a` holds a curvature: the next search keeps it
};

/// Moves the state to the mode (section 4, 'Mode search').
void searchMode(Objective& objective, ModeState& state);

/// Curvature at eta in full, eigenvalues floored at 0.5 (section 4, 'Axes').
[[nodiscard]] EigenSystem axesAt(Objective& objective, const ModeState& state);

} // namespace coilbook::wear
