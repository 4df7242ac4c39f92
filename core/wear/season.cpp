#include "core/wear/season.h"

#include <algorithm>
#include <utility>

namespace coilbook::wear {

Season firstSessions(const Season& season, std::size_t count, std::vector<std::size_t>* lives) {
    Season part;
    part.sessions.assign(season.sessions.begin(),
                         season.sessions.begin() + static_cast<std::ptrdiff_t>(count));
    part.now = part.sessions.back();
    part.overRevs = season.overRevs;
    part.runIn = season.runIn;
    part.hitDegreesOfFreedom = season.hitDegreesOfFreedom;
    for (std::size_t i = 0; i < season.lives.size(); ++i) {
        Life life = season.lives[i];
        std::erase_if(life.cells, [&](const Cell& cell) { return cell.session >= count; });
        if (life.cells.empty()) {
            continue;
        }
        std::erase_if(life.levelChanges, [&](const LevelStep& change) {
            return change.fromCell >= life.cells.size();
        });
        if (life.outSession != kStillFitted && life.outSession >= count) {
            life.outSession = kStillFitted;
        }
        life.xNow = life.cells.back().x;
        life.xExhaustNow = life.cells.back().xExhaust;
        life.overRevsNow = life.cells.back().overRevs;
        part.lives.push_back(std::move(life));
        if (lives != nullptr) {
            lives->push_back(i);
        }
    }
    return part;
}

} // namespace coilbook::wear
