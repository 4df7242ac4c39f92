#include "core/wear/session_check.h"

#include "core/wear/functional.h"
#include "core/wear/mixture.h"

#include <cmath>

namespace coilbook::wear {

std::optional<double> sessionCheck(const Season& season, const Fit& full) {
    if (season.sessions.size() < 2) {
        return std::nullopt;
    }
    const std::optional<Fit> earlier = fitSeason(firstSessions(season, season.sessions.size() - 1));
    return earlier ? sessionCheck(season, full, *earlier) : std::nullopt;
}

std::optional<double> sessionCheck(const Season& season, const Fit& full, const Fit& earlier) {
    const std::size_t newest = season.sessions.size() - 1;
    double tail = 0.0;
    double weights = 0.0;
    for (const auto& [weight, solution] : solveAt(earlier.nodes, earlier.prior, full.design)) {
        const auto [mean, variance] = sessionShift(newest, full.design, solution);
        const double prior = solution.theta().sigmaC * solution.theta().sigmaC;
        double z = 0.0;
        if (variance < prior) {
            // What the session itself says, its own prior taken out again.
            const double likelihood = 1.0 / (1.0 / variance - 1.0 / prior);
            z = likelihood * mean / variance / std::sqrt(likelihood + prior);
        }
        tail += weight * normalCdf(z);
        weights += weight;
    }
    if (!(weights > 0.0) || !std::isfinite(tail)) {
        return std::nullopt;
    }
    return normalQuantile(tail / weights);
}

} // namespace coilbook::wear
