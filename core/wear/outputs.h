#pragma once

#include "core/wear/fit.h"
#include "core/wear/mixture.h"

#include <array>
#include <vector>

namespace coilbook::wear {

constexpr int kHorizon = 60; ///< races ahead that are looked at, at most

/// Posterior of a life's loss and rate as normals over the nodes (sections 3 and 5).
class LifePosterior {
public:
    /// Loss now; exactly 0 for a life with exposure 0.
    [[nodiscard]] Mixture lossNow() const { return lossAhead(0.0); }

    /// Loss `races` from now.
    [[nodiscard]] Mixture lossAhead(double races) const;

    /// Loss per race.
    [[nodiscard]] Mixture rate() const;

    /// P(loss h races ahead >= limit) for h = 0 … 60; 0 at h = 0 for a life with exposure 0, which
    /// has lost nothing. Section 5's F is the running maximum of it. Beyond `exactUpTo` races the
    /// odds are only told until they reach 0.9, the last of the levels that anybody asks for; from
    /// there on they are repeated.
    [[nodiscard]] std::array<double, kHorizon + 1> oddsAhead(double limit,
                                                             int exactUpTo = kHorizon) const;

private:
    friend class PosteriorMaker;

    struct Part {
        double weight = 0.0;
        double loss = 0.0;
        double rate = 0.0;
        double lossVariance = 0.0;
        double rateVariance = 0.0;
        double covariance = 0.0;
        double wander = 0.0; ///< kappa² + gamma², per race

        [[nodiscard]] double varianceAhead(double races) const {
            const double variance = lossVariance + 2.0 * races * covariance +
                                    races * races * rateVariance + races * wander;
            return variance > 0.0 ? variance : 0.0;
        }
    };

    std::vector<Part> m_parts;
    bool m_isNew = false; ///< exposure 0
};

[[nodiscard]] LifePosterior posteriorOfLife(std::size_t life, const Season& season, const Fit& fit);

/// The same of many lives at once, in the order asked for: what they share is computed once.
[[nodiscard]] std::vector<LifePosterior> posteriorsOfLives(const std::vector<std::size_t>& lives,
                                                           const Season& season, const Fit& fit);

/// The lives that stand in the engine.
[[nodiscard]] std::vector<std::size_t> livesStillFitted(const Season& season);

/// Losses at the times of the cells of lives, for the drawn curve: likewise over the nodes.
[[nodiscard]] std::vector<std::vector<Mixture>> lossesAtCells(const std::vector<std::size_t>& lives,
                                                              const Season& season, const Fit& fit);

/// By how much the fitted start of each life, a_s of section 2, lies above the kept mean of its
/// first cell: what that reading was off by itself and by its session's shift.
[[nodiscard]] std::vector<double> startsOfLives(const std::vector<std::size_t>& lives,
                                                const Season& season, const Fit& fit);

/// By how much each logged level change of a life has raised its readings, lbf.
[[nodiscard]] std::vector<double> levelStepsOf(std::size_t life, const Season& season,
                                               const Fit& fit);

/// What a logged over-rev has cost every spring that stood in the engine, lbf: o_k of section 2.
/// `overRev` is below Season::overRevs. One that no reading follows has its prior.
[[nodiscard]] Mixture overRevCost(std::size_t overRev, const Fit& fit);

/// The common shift of a session in the present fit.
[[nodiscard]] Mixture shiftOf(std::size_t session, const Fit& fit);

} // namespace coilbook::wear
