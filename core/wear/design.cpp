#include "core/wear/design.h"

#include <algorithm>

namespace coilbook::wear {

namespace {

std::vector<const Event*> eventsOf(const std::vector<Event>& events, std::size_t life) {
    std::vector<const Event*> own;
    for (const Event& event : events) {
        if (event.life == life) {
            own.push_back(&event);
        }
    }
    return own;
}

bool sameRow(const Cell& a, const Cell& b) {
    return a.session == b.session && a.x == b.x && a.xExhaust == b.xExhaust && a.hits == b.hits &&
           a.fixedVariance == b.fixedVariance && a.overRevs == b.overRevs;
}

/// Whether two lives without events of their own may share a class. Their functionals take kind,
/// installation and exposure from the life itself, but one class must have one of each.
bool mayShare(const Life& a, const Life& b) {
    return a.kind == b.kind && a.installed == b.installed && a.outSession == b.outSession &&
           a.xNow == b.xNow && a.xExhaustNow == b.xExhaustNow && a.overRevsNow == b.overRevsNow &&
           a.levelChanges.empty() && b.levelChanges.empty() && a.cells.size() == b.cells.size() &&
           std::equal(a.cells.begin(), a.cells.end(), b.cells.begin(), sameRow);
}

LifeClass classOf(const Season& season, const Life& life, const std::vector<const Event*>& events) {
    const auto n = static_cast<Eigen::Index>(life.cells.size());
    const auto levels = static_cast<Eigen::Index>(life.levelChanges.size());
    LifeClass made;
    made.levelColumns = levels;
    made.x.resize(n);
    made.fixedVariance.resize(n);
    made.local.setZero(n, 3 + levels + static_cast<Eigen::Index>(events.size()));
    made.shared.setZero(n, 3 + static_cast<Eigen::Index>(season.overRevs));
    for (Eigen::Index i = 0; i < n; ++i) {
        const Cell& cell = life.cells[static_cast<std::size_t>(i)];
        const double settled = cell.x > 0.0 && !season.runIn ? 1.0 : 0.0;
        made.sessions.push_back(static_cast<Eigen::Index>(cell.session));
        made.x[i] = cell.x;
        made.fixedVariance[i] = cell.fixedVariance;
        made.local.row(i).head<3>() << 1.0, -cell.x, -settled;
        made.shared.row(i).head<3>() << -cell.x, -cell.xExhaust, -settled;
        for (std::size_t k = 0; k < season.overRevs; ++k) {
            made.shared(i, 3 + static_cast<Eigen::Index>(k)) = -cell.overRevs[k];
        }
        for (Eigen::Index l = 0; l < levels; ++l) {
            const auto from = life.levelChanges[static_cast<std::size_t>(l)].fromCell;
            made.local(i, 3 + l) = static_cast<std::size_t>(i) >= from ? 1.0 : 0.0;
        }
        for (std::size_t e = 0; e < events.size(); ++e) {
            const auto at = static_cast<Eigen::Index>(events[e]->cell);
            const bool isDrop = events[e]->kind == Event::Kind::Drop;
            const double value = isDrop ? (i >= at ? -1.0 : 0.0) : (i == at ? 1.0 : 0.0);
            made.local(i, 3 + levels + static_cast<Eigen::Index>(e)) = value;
        }
    }
    return made;
}

void addReadings(LifeClass& lifeClass, const std::vector<Life>& lives) {
    const auto n = static_cast<Eigen::Index>(lifeClass.sessions.size());
    lifeClass.readings.resize(n, static_cast<Eigen::Index>(lifeClass.lives.size()));
    for (std::size_t s = 0; s < lifeClass.lives.size(); ++s) {
        const std::vector<Cell>& cells = lives[lifeClass.lives[s]].cells;
        for (Eigen::Index i = 0; i < n; ++i) {
            lifeClass.readings(i, static_cast<Eigen::Index>(s)) =
                cells[static_cast<std::size_t>(i)].mean - cells.front().mean;
        }
    }
    lifeClass.readingsSum = lifeClass.readings.rowwise().sum();
    lifeClass.readingsOuter = 2.0 * lifeClass.readings * lifeClass.readings.transpose();
    lifeClass.readingsOuter.diagonal() *= 0.5;
}

} // namespace

Eigen::Index Design::columnOf(std::size_t event) const {
    const Event& wanted = events[event];
    Eigen::Index column = 3 + classes[positions[wanted.life].lifeClass].levelColumns;
    for (std::size_t e = 0; e < event; ++e) {
        column += events[e].life == wanted.life ? 1 : 0;
    }
    return column;
}

Design designOf(const Season& season, const std::vector<Event>& events) {
    Design design;
    design.sessions = Eigen::Map<const Eigen::VectorXd>(
        season.sessions.data(), static_cast<Eigen::Index>(season.sessions.size()));
    design.now = season.now;
    design.overRevs = static_cast<Eigen::Index>(season.overRevs);
    design.events = events;
    std::vector<bool> closed; // a class with events takes no second life
    for (std::size_t i = 0; i < season.lives.size(); ++i) {
        const Life& life = season.lives[i];
        const std::vector<const Event*> own = eventsOf(events, i);
        std::size_t at = design.classes.size();
        if (own.empty()) {
            for (std::size_t c = 0; c < design.classes.size(); ++c) {
                if (!closed[c] && mayShare(season.lives[design.classes[c].lives.front()], life)) {
                    at = c;
                    break;
                }
            }
        }
        if (at == design.classes.size()) {
            design.classes.push_back(classOf(season, life, own));
            closed.push_back(!own.empty());
        }
        LifeClass& home = design.classes[at];
        design.positions.push_back({at, static_cast<Eigen::Index>(home.lives.size())});
        home.lives.push_back(i);
    }
    for (LifeClass& lifeClass : design.classes) {
        addReadings(lifeClass, season.lives);
    }
    return design;
}

} // namespace coilbook::wear
