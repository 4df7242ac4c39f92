#include "core/wear/predicted_reading.h"

#include "core/wear/functional.h"
#include "core/wear/loss_functional.h"
#include "core/wear/outputs.h"

namespace coilbook::wear {

namespace {

/// The row that the reading would have (Z and F of section 3), its sign turned: what is written
/// there for a loss stands here as it is.
Functional lossSideOf(const NewReading& reading, const Season& season, const Design& design) {
    const Life& life = season.lives[reading.life];
    const LifeClass& lifeClass = design.classes[design.positions[reading.life].lifeClass];
    const double settled = life.xNow > 0.0 && !season.runIn ? 1.0 : 0.0;
    Functional row;
    row.life = reading.life;
    row.local = Eigen::VectorXd::Zero(lifeClass.local.cols());
    row.local.head<3>() << -1.0, life.xNow, settled;
    row.local.segment(3, lifeClass.levelColumns).setConstant(-1.0);
    row.shared = Eigen::VectorXd::Zero(design.columns());
    row.shared.head<3>() << life.xNow, life.xExhaustNow, settled;
    for (std::size_t k = 0; k < life.overRevsNow.size(); ++k) {
        row.shared[3 + static_cast<Eigen::Index>(k)] = life.overRevsNow[k];
    }
    row.ownWanderAt = life.xNow;
    if (reading.session) { // h_t holds the common wander up to its session
        row.shared[design.sharedColumns() + static_cast<Eigen::Index>(*reading.session)] = -1.0;
    } else {
        row.commonWander = std::pair(season.sessions.front(), season.now);
    }
    return row;
}

} // namespace

Mixture predictedReading(const NewReading& reading, const Season& season, const Fit& fit) {
    const Design& design = fit.design;
    Functional row = lossSideOf(reading, season, design);
    Functional dropped = row;
    double pDropped = 0.0; // by a drop that is pending; at most one is
    for (std::size_t e = 0; e < design.events.size(); ++e) {
        const Event& event = design.events[e];
        if (event.life != reading.life || event.kind != Event::Kind::Drop) {
            continue;
        }
        dropped.local[design.columnOf(e)] = 1.0;
        if (event.pending) {
            pDropped = dropProbability(event);
        } else {
            row.local[design.columnOf(e)] = 1.0;
        }
    }
    const double first = season.lives[reading.life].cells.front().mean;
    std::vector<MixturePart> parts;
    for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
        const Hyperparameters& theta = fit.solutions[i].theta();
        const double shift = reading.session ? 0.0 : theta.sigmaC * theta.sigmaC;
        const double noise = theta.sigma * theta.sigma + reading.fixedVariance + shift;
        const auto add = [&](const Functional& functional, double share) {
            if (share > 0.0) {
                const FunctionalPosterior side = posteriorOf(functional, design, fit.solutions[i]);
                parts.push_back(
                    {fit.nodes[i].weight * share, first - side.mean, side.variance() + noise});
            }
        };
        add(row, 1.0 - pDropped);
        add(dropped, pDropped);
    }
    return Mixture(std::move(parts));
}

} // namespace coilbook::wear
