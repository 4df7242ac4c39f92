#include "core/wear/fit.h"

#include "core/wear/event_scores.h"

#include <cmath>
#include <limits>
#include <utility>

namespace coilbook::wear {

namespace {

constexpr std::size_t kNodes = 27;
constexpr int kMostAdded = 6;
constexpr double kClearly = 4.0; ///< log odds asked for before the mode is known
constexpr double kLikely = 0.0;

bool solveAtEta(Solution& solution, const Design& design, const HyperPrior& prior, const Eta& eta) {
    const Hyperparameters theta = prior.at(eta);
    return solution.solve(
        design, theta,
        coefficientPriorsAt(theta.lambda, static_cast<std::size_t>(design.overRevs)));
}

/// Nodes, weights and solutions from mode, axes and design.
bool integrate(Fit& fit) {
    if (!fit.axes.values.allFinite() || !fit.axes.vectors.allFinite() ||
        !solveAtEta(fit.atMode, fit.design, fit.prior, fit.mode.eta)) {
        return false;
    }
    fit.solutions.resize(kNodes); // those of an earlier fit lend their memory
    std::size_t node = 0;
    fit.nodes = nodesAround(fit.mode.eta, fit.axes, [&](const Eta& eta) {
        Solution& solution = fit.solutions[node++];
        return solveAtEta(solution, fit.design, fit.prior, eta)
                   ? 0.5 * eta.squaredNorm() - solution.logMarginalLikelihood()
                   : std::numeric_limits<double>::infinity();
    });
    for (std::size_t i = fit.nodes.size(); i-- > 0;) {
        if (!(fit.nodes[i].weight > 0.0)) {
            const auto at = static_cast<std::ptrdiff_t>(i);
            fit.nodes.erase(fit.nodes.begin() + at);
            fit.solutions.erase(fit.solutions.begin() + at);
        }
    }
    return !fit.nodes.empty();
}

/// The greedy search for events and the two mode searches around it (section 7).
class FitMaker {
public:
    FitMaker(const Season& season, const FitOptions& options)
        : m_season(season)
        , m_options(options) {
        m_fit.prior = hyperPriorFor(season.hitDegreesOfFreedom);
        m_fit.design = designOf(season, eventsSaid(season));
    }

    std::optional<Fit> make() {
        bool addedEarly = false;
        if (m_options.events) {
            addedEarly = addCandidates(kClearly);
        }
        search();
        if (m_options.events) {
            const bool addedLate = addCandidates(kLikely);
            const bool deleted = addedEarly && deleteUnlikely();
            if (addedLate || deleted) {
                search();
            }
        }
        return finish();
    }

private:
    void search() {
        Objective objective(m_fit.design, m_fit.prior);
        searchMode(objective, m_fit.mode);
    }

    bool solveHere() { return solveAtEta(m_fit.atMode, m_fit.design, m_fit.prior, m_fit.mode.eta); }

    bool addCandidates(double threshold) {
        bool added = false;
        for (int i = 0; i < kMostAdded; ++i) {
            if (!solveHere()) {
                break;
            }
            const std::optional<Candidate> best =
                bestCandidate(m_season, m_fit.design, m_fit.atMode);
            if (!best || !(best->logOdds > threshold)) {
                break;
            }
            std::vector<Event> events = m_fit.design.events;
            events.push_back(best->event);
            m_fit.design = designOf(m_season, events);
            added = true;
        }
        return added;
    }

    bool deleteUnlikely() {
        if (!solveHere()) {
            return false;
        }
        std::vector<Event> kept;
        for (std::size_t e = 0; e < m_fit.design.events.size(); ++e) {
            Event event = m_fit.design.events[e];
            if (event.byUser || rejudge(e, m_season, m_fit.design, m_fit.atMode, event) >= 0.0) {
                kept.push_back(event);
            }
        }
        const bool deleted = kept.size() != m_fit.design.events.size();
        m_fit.design = designOf(m_season, kept);
        return deleted;
    }

    std::optional<Fit> finish() {
        Objective objective(m_fit.design, m_fit.prior);
        m_fit.mode.value = objective(m_fit.mode.eta);
        if (!std::isfinite(m_fit.mode.value)) {
            return std::nullopt;
        }
        m_fit.axes = axesAt(objective, m_fit.mode);
        return integrate(m_fit) ? std::optional(std::move(m_fit)) : std::nullopt;
    }

    const Season& m_season;
    const FitOptions& m_options;
    Fit m_fit;
};

} // namespace

std::optional<Fit> fitSeason(const Season& season, const FitOptions& options) {
    if (season.lives.empty()) {
        return std::nullopt;
    }
    return FitMaker(season, options).make();
}

std::optional<Fit> refit(const Season& season, Fit earlier) {
    if (season.lives.empty()) {
        return std::nullopt;
    }
    std::vector<Event> events = eventsSaid(season);
    for (const Event& event : earlier.design.events) {
        const bool isThere =
            event.life < season.lives.size() && event.cell < season.lives[event.life].cells.size();
        if (isThere && !event.byUser &&
            season.lives[event.life].cells[event.cell].say == Say::None) {
            events.push_back(event);
        }
    }
    earlier.prior = hyperPriorFor(season.hitDegreesOfFreedom);
    earlier.design = designOf(season, events);
    return integrate(earlier) ? std::optional(std::move(earlier)) : std::nullopt;
}

std::vector<std::pair<double, Solution>> solveAt(const std::vector<Node>& nodes,
                                                 const HyperPrior& prior, const Design& design) {
    std::vector<std::pair<double, Solution>> solved;
    for (const Node& node : nodes) {
        Solution solution;
        if (solveAtEta(solution, design, prior, node.eta)) {
            solved.emplace_back(node.weight, std::move(solution));
        }
    }
    return solved;
}

} // namespace coilbook::wear
