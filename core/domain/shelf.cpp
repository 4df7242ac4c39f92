#include "core/domain/shelf.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace coilbook {

namespace {

ShelvedSpring shelved(const Spring& spring, const Shelving* shelving, const HistoryLife* life,
                      const EngineHistory& history) {
    ShelvedSpring entry;
    entry.spring = spring;
    if (shelving != nullptr) {
        entry.where = shelving->to;
        entry.since = shelving->shelvedOn;
        entry.pressure = shelving->pressure;
        entry.height = shelving->height;
        entry.races = shelving->racesBefore.value_or(0);
        entry.reason = shelving->reason;
    }
    if (life != nullptr && !life->cells.empty()) {
        entry.lastInEngine = life->cells.back().mean();
        entry.lastReadOn = history.inspections[life->cells.back().inspection].on;
        entry.races += life->exposureNow;
    }
    return entry;
}

} // namespace

const Shelving* shelvingInForce(const EngineLog& log, const SpringId& spring) {
    const Shelving* newest = nullptr;
    for (const Shelving& shelving : log.shelvings) {
        if (shelving.withdrawn || shelving.spring != spring) {
            continue;
        }
        const auto key = [](const Shelving& s) {
            return std::tuple(s.shelvedOn.toJulianDay(), s.id);
        };
        if (newest == nullptr || key(shelving) > key(*newest)) {
            newest = &shelving;
        }
    }
    return newest;
}

std::vector<ShelvedSpring> shelfOf(const EngineLog& log, const EngineHistory& history) {
    std::map<SpringId, const HistoryLife*> lives;
    for (const HistoryLife& life : history.lives) {
        lives[life.spring] = &life;
    }
    std::vector<ShelvedSpring> shelf;
    for (const Spring& spring : log.springs) {
        const auto life = lives.find(spring.id);
        const bool stood = life != lives.end();
        const Shelving* shelving = shelvingInForce(log, spring.id);
        // A spare that was entered and taken back again lies nowhere; a spring whose fitting was
        // taken back lies on the shelf.
        const bool wasShelved =
            std::any_of(log.shelvings.begin(), log.shelvings.end(),
                        [&](const Shelving& entry) { return entry.spring == spring.id; });
        if ((stood && life->second->fitted) || (!stood && shelving == nullptr && wasShelved)) {
            continue;
        }
        shelf.push_back(shelved(spring, shelving, stood ? life->second : nullptr, history));
    }
    std::sort(shelf.begin(), shelf.end(), [](const ShelvedSpring& a, const ShelvedSpring& b) {
        return a.spring.label < b.spring.label;
    });
    return shelf;
}

} // namespace coilbook
