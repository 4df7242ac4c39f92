#include "core/wear/outputs.h"

#include "core/wear/functional.h"
#include "core/wear/loss_functional.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilbook::wear {

namespace {

Functional rateFunctional(std::size_t index, const Season& season, const Design& design) {
    const LifeClass& lifeClass = design.classes[design.positions[index].lifeClass];
    Functional f;
    f.life = index;
    f.local = Eigen::VectorXd::Zero(lifeClass.local.cols());
    f.local[1] = 1.0;
    f.shared = Eigen::VectorXd::Zero(design.columns());
    f.shared[0] = 1.0;
    f.shared[1] = season.lives[index].kind;
    return f;
}

/// Positions in `lives` of those that share a class.
std::vector<std::vector<std::size_t>> byClass(const std::vector<std::size_t>& lives,
                                              const Design& design) {
    std::map<std::size_t, std::vector<std::size_t>> classes;
    for (std::size_t i = 0; i < lives.size(); ++i) {
        classes[design.positions[lives[i]].lifeClass].push_back(i);
    }
    std::vector<std::vector<std::size_t>> positions;
    for (auto& [lifeClass, ofClass] : classes) {
        positions.push_back(std::move(ofClass));
    }
    return positions;
}

auto readingsOf(std::size_t life, const Design& design) {
    const LifePosition& position = design.positions[life];
    return design.classes[position.lifeClass].readings.col(position.column);
}

} // namespace

/// Fills in the posteriors of lives of one class, node by node.
class PosteriorMaker {
public:
    PosteriorMaker(const Season& season, const Fit& fit)
        : m_season(season)
        , m_fit(fit) {}

    void add(const std::vector<std::size_t>& lives, const std::vector<LifePosterior*>& posteriors) {
        const std::size_t first = lives.front();
        const Life& data = m_season.lives[first];
        const LossFunctional loss =
            lossFunctional(first, instantAhead(data, m_season), m_season, m_fit.design);
        const Functional rate = rateFunctional(first, m_season, m_fit.design);
        const double dropped = loss.dropProbability();
        const Functional lossWithStep = loss.withStep();
        for (LifePosterior* posterior : posteriors) {
            posterior->m_isNew = !(data.xNow > 0.0);
            posterior->m_parts.reserve(m_fit.nodes.size() * (dropped > 0.0 ? 2 : 1));
        }
        for (std::size_t i = 0; i < m_fit.nodes.size(); ++i) {
            const FunctionalPosterior b = posteriorOf(rate, m_fit.design, m_fit.solutions[i]);
            addParts(i, loss.trend, 1.0 - dropped, b, lives, posteriors);
            addParts(i, lossWithStep, dropped, b, lives, posteriors);
        }
    }

private:
    void addParts(std::size_t node, const Functional& functional, double share,
                  const FunctionalPosterior& b, const std::vector<std::size_t>& lives,
                  const std::vector<LifePosterior*>& posteriors) const {
        const double weight = m_fit.nodes[node].weight * share;
        if (!(weight > 0.0)) {
            return;
        }
        const Solution& solution = m_fit.solutions[node];
        const FunctionalPosterior d = posteriorOf(functional, m_fit.design, solution);
        const Hyperparameters& theta = solution.theta();
        LifePosterior::Part part{weight,
                                 0.0,
                                 0.0,
                                 d.variance(),
                                 b.variance(),
                                 covariance(d, b),
                                 theta.kappa * theta.kappa + theta.gamma * theta.gamma};
        for (std::size_t s = 0; s < lives.size(); ++s) {
            const auto readings = readingsOf(lives[s], m_fit.design);
            part.loss = d.meanGiven(readings);
            part.rate = b.meanGiven(readings);
            posteriors[s]->m_parts.push_back(part);
        }
    }

    const Season& m_season;
    const Fit& m_fit;
};

LifePosterior posteriorOfLife(std::size_t life, const Season& season, const Fit& fit) {
    return posteriorsOfLives({life}, season, fit).front();
}

std::vector<LifePosterior> posteriorsOfLives(const std::vector<std::size_t>& lives,
                                             const Season& season, const Fit& fit) {
    std::vector<LifePosterior> posteriors(lives.size());
    PosteriorMaker maker(season, fit);
    for (const std::vector<std::size_t>& positions : byClass(lives, fit.design)) {
        std::vector<std::size_t> ofClass;
        std::vector<LifePosterior*> theirs;
        for (const std::size_t position : positions) {
            ofClass.push_back(lives[position]);
            theirs.push_back(&posteriors[position]);
        }
        maker.add(ofClass, theirs);
    }
    return posteriors;
}

std::vector<std::size_t> livesStillFitted(const Season& season) {
    std::vector<std::size_t> lives;
    for (std::size_t i = 0; i < season.lives.size(); ++i) {
        if (season.lives[i].outSession == kStillFitted) {
            lives.push_back(i);
        }
    }
    return lives;
}

Mixture LifePosterior::lossAhead(double races) const {
    if (m_isNew && !(races > 0.0)) {
        return Mixture({{1.0, 0.0, 0.0}});
    }
    std::vector<MixturePart> parts;
    parts.reserve(m_parts.size());
    for (const Part& part : m_parts) {
        parts.push_back({part.weight, part.loss + races * part.rate, part.varianceAhead(races)});
    }
    return Mixture(std::move(parts));
}

Mixture LifePosterior::rate() const {
    std::vector<MixturePart> parts;
    parts.reserve(m_parts.size());
    for (const Part& part : m_parts) {
        parts.push_back({part.weight, part.rate, part.rateVariance});
    }
    return Mixture(std::move(parts));
}

std::array<double, kHorizon + 1> LifePosterior::oddsAhead(double limit, int exactUpTo) const {
    constexpr double kLastLevel = 0.9;
    constexpr double kCertain = 8.3; // beyond it the normal distribution function is 0 or 1
    std::array<double, kHorizon + 1> odds{};
    for (std::size_t h = m_isNew ? 1 : 0; h < odds.size(); ++h) {
        if (h > 0 && static_cast<int>(h) > exactUpTo && odds[h - 1] >= kLastLevel) {
            odds[h] = odds[h - 1];
            continue;
        }
        const auto races = static_cast<double>(h);
        double sum = 0.0;
        for (const Part& part : m_parts) {
            const double over = part.loss + races * part.rate - limit;
            const double variance = part.varianceAhead(races);
            if (over * over >= kCertain * kCertain * variance) {
                sum += over >= 0.0 ? part.weight : 0.0;
            } else {
                sum += part.weight * normalCdf(over / std::sqrt(variance));
            }
        }
        odds[h] = std::clamp(sum, 0.0, 1.0);
    }
    return odds;
}

std::vector<std::vector<Mixture>> lossesAtCells(const std::vector<std::size_t>& lives,
                                                const Season& season, const Fit& fit) {
    std::vector<std::vector<Mixture>> losses(lives.size());
    for (const std::vector<std::size_t>& positions : byClass(lives, fit.design)) {
        const std::size_t first = lives[positions.front()];
        const std::vector<Cell>& cells = season.lives[first].cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const Instant at{cells[c].x,
                             cells[c].xExhaust,
                             season.sessions[cells[c].session],
                             &cells[c].overRevs,
                             c + 1,
                             true};
            const LossFunctional loss = lossFunctional(first, at, season, fit.design);
            std::vector<std::vector<MixturePart>> parts(positions.size());
            for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
                if (!(cells[c].x > 0.0)) {
                    break;
                }
                const FunctionalPosterior d = posteriorOf(loss.trend, fit.design, fit.solutions[i]);
                const double variance = d.variance();
                for (std::size_t s = 0; s < positions.size(); ++s) {
                    parts[s].push_back({fit.nodes[i].weight,
                                        d.meanGiven(readingsOf(lives[positions[s]], fit.design)),
                                        variance});
                }
            }
            for (std::size_t s = 0; s < positions.size(); ++s) {
                if (parts[s].empty()) {
                    parts[s].push_back({1.0, 0.0, 0.0}); // nothing is lost at exposure 0
                }
                losses[positions[s]].emplace_back(std::move(parts[s]));
            }
        }
    }
    return losses;
}

std::vector<double> startsOfLives(const std::vector<std::size_t>& lives, const Season& season,
                                  const Fit& fit) {
    std::vector<double> starts(lives.size(), 0.0);
    for (const std::vector<std::size_t>& positions : byClass(lives, fit.design)) {
        const std::size_t first = lives[positions.front()];
        const Design& design = fit.design;
        Functional start; // the local start is that of the readings: a_s + G(X0_s)
        start.life = first;
        start.local =
            Eigen::VectorXd::Zero(design.classes[design.positions[first].lifeClass].local.cols());
        start.local[0] = 1.0;
        start.shared = Eigen::VectorXd::Zero(design.columns());
        start.commonWander = std::pair(season.lives[first].installed, 0.0);
        for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
            const FunctionalPosterior a = posteriorOf(start, design, fit.solutions[i]);
            for (const std::size_t position : positions) {
                starts[position] +=
                    fit.nodes[i].weight * a.meanGiven(readingsOf(lives[position], design));
            }
        }
    }
    return starts;
}

std::vector<double> levelStepsOf(std::size_t life, const Season& season, const Fit& fit) {
    const Design& design = fit.design;
    std::vector<double> steps;
    for (std::size_t l = 0; l < season.lives[life].levelChanges.size(); ++l) {
        Functional step;
        step.life = life;
        step.local =
            Eigen::VectorXd::Zero(design.classes[design.positions[life].lifeClass].local.cols());
        step.local[3 + static_cast<Eigen::Index>(l)] = 1.0;
        step.shared = Eigen::VectorXd::Zero(design.columns());
        double size = 0.0;
        for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
            size += fit.nodes[i].weight *
                    posteriorOf(step, design, fit.solutions[i]).meanGiven(readingsOf(life, design));
        }
        steps.push_back(size);
    }
    return steps;
}

Mixture overRevCost(std::size_t overRev, const Fit& fit) {
    Functional step;
    step.shared = Eigen::VectorXd::Zero(fit.design.columns());
    step.shared[3 + static_cast<Eigen::Index>(overRev)] = 1.0;
    std::vector<MixturePart> parts;
    for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
        const FunctionalPosterior o = posteriorOf(step, fit.design, fit.solutions[i]);
        parts.push_back({fit.nodes[i].weight, o.mean, o.variance()});
    }
    return Mixture(std::move(parts));
}

Mixture shiftOf(std::size_t session, const Fit& fit) {
    std::vector<MixturePart> parts;
    for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
        const auto [mean, variance] = sessionShift(session, fit.design, fit.solutions[i]);
        parts.push_back({fit.nodes[i].weight, mean, variance});
    }
    return Mixture(std::move(parts));
}

} // namespace coilbook::wear
