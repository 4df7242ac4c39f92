#pragma once

#include "core/wear/functional.h"
#include "core/wear/season.h"

#include <utility>
#include <vector>

namespace coilbook::wear {

/// Where along its life a loss is asked for.
struct Instant {
    double x = 0.0;
    double xExhaust = 0.0;
    double calendar = 0.0; ///< X
    const std::vector<double>* overRevs = nullptr;
    std::size_t cells = 0; ///< cells up to then: later drops do not count
    bool settled = false;  ///< contains the break-in
};

/// D of section 3 without pending steps, and the columns of those.
struct LossFunctional {
    Functional trend;
    std::vector<std::pair<Eigen::Index, double>> pending; ///< column, probability of a drop

    /// At most one event is pending: only the newest cell bears one.
    [[nodiscard]] double dropProbability() const {
        return pending.empty() ? 0.0 : pending.front().second;
    }

    /// With the pending step, if there is one.
    [[nodiscard]] Functional withStep() const;
};

[[nodiscard]] LossFunctional lossFunctional(std::size_t life, const Instant& at,
                                            const Season& season, const Design& design);

/// `races` from now, as the trend has it, for a life that stands in the engine.
[[nodiscard]] Instant instantAhead(const Life& life, const Season& season, double races = 0.0);

/// Probability that a pending event is a drop: pL of section 7.
[[nodiscard]] double dropProbability(const Event& event);

} // namespace coilbook::wear
