#include "core/wear/loss_functional.h"

#include <algorithm>
#include <cmath>

namespace coilbook::wear {

Functional LossFunctional::withStep() const {
    Functional stepped = trend;
    if (!pending.empty()) {
        stepped.local[pending.front().first] = 1.0;
    }
    return stepped;
}

LossFunctional lossFunctional(std::size_t index, const Instant& at, const Season& season,
                              const Design& design) {
    const Life& life = season.lives[index];
    const LifeClass& lifeClass = design.classes[design.positions[index].lifeClass];
    LossFunctional loss;
    Functional& f = loss.trend;
    const double settled = at.settled && !season.runIn ? 1.0 : 0.0;
    f.life = index;
    f.local = Eigen::VectorXd::Zero(lifeClass.local.cols());
    f.local.head<3>() << 0.0, at.x, settled;
    f.shared = Eigen::VectorXd::Zero(design.columns());
    f.shared.head<3>() << at.x, at.xExhaust, settled;
    for (std::size_t k = 0; k < at.overRevs->size(); ++k) {
        f.shared[3 + static_cast<Eigen::Index>(k)] = (*at.overRevs)[k];
    }
    f.ownWanderAt = at.x;
    f.commonWander = std::pair(life.installed, std::max(at.calendar, life.installed));
    for (std::size_t e = 0; e < design.events.size(); ++e) {
        const Event& event = design.events[e];
        if (event.life != index || event.kind != Event::Kind::Drop || event.cell >= at.cells) {
            continue;
        }
        if (event.pending) {
            loss.pending.emplace_back(design.columnOf(e), dropProbability(event));
        } else {
            f.local[design.columnOf(e)] = 1.0;
        }
    }
    return loss;
}

Instant instantAhead(const Life& life, const Season& season, double races) {
    // A life with exposure 0 has its break-in before it: it belongs to every loss ahead.
    return {life.xNow + races,  life.xExhaustNow + races * life.kind,
            season.now + races, &life.overRevsNow,
            life.cells.size(),  true};
}

double dropProbability(const Event& event) {
    const double largest = std::max({event.logOddsDrop, event.logOddsMisread, 0.0});
    const double drop = std::exp(event.logOddsDrop - largest);
    return drop / (std::exp(-largest) + std::exp(event.logOddsMisread - largest) + drop);
}

} // namespace coilbook::wear
