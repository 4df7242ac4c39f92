#include "core/services/spare_match.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace coilbook {

namespace {

Force medianOf(std::vector<Force> forces) {
    std::sort(forces.begin(), forces.end());
    const std::size_t middle = forces.size() / 2;
    return forces.size() % 2 == 1 ? forces[middle] : (forces[middle - 1] + forces[middle]) / 2.0;
}

/// The part that most of the fitted springs are of; empty where none is noted.
QString partOfSet(const EngineLog& log, const EngineHistory& history) {
    std::map<QString, int> counts;
    for (const std::size_t life : fittedLives(history)) {
        for (const Spring& spring : log.springs) {
            if (spring.id == history.lives[life].spring && !spring.part.isEmpty()) {
                ++counts[spring.part];
            }
        }
    }
    const auto most =
        std::max_element(counts.begin(), counts.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == counts.end() ? QString() : most->first;
}

} // namespace

std::optional<Force> setPressure(const EngineHistory& history, const Place& place) {
    std::vector<Force> sameValve;
    std::vector<Force> all;
    for (const std::size_t index : fittedLives(history)) {
        const HistoryLife& life = history.lives[index];
        if (life.cells.empty()) {
            continue;
        }
        all.push_back(life.cells.front().mean());
        if (life.place.valve == place.valve) {
            sameValve.push_back(all.back());
        }
    }
    if (all.empty()) {
        return std::nullopt;
    }
    return medianOf(sameValve.empty() ? std::move(all) : std::move(sameValve));
}

std::vector<SpareProposal> proposedSpares(const EngineLog& log, const EngineHistory& history,
                                          const Place& place) {
    const QString part = partOfSet(log, history);
    const std::optional<Force> target = setPressure(history, place);
    std::vector<SpareProposal> proposals;
    for (ShelvedSpring& spare : shelfOf(log, history)) {
        if (spare.where != Storage::Shelf) {
            continue;
        }
        SpareProposal proposal;
        proposal.samePart = spare.spring.part == part;
        const std::optional<Force> pressure =
            spare.pressure ? std::optional(spare.pressure->force()) : spare.lastInEngine;
        if (pressure && target) {
            proposal.apart = *pressure < *target ? *target - *pressure : *pressure - *target;
        }
        proposal.spare = std::move(spare);
        proposals.push_back(std::move(proposal));
    }
    std::stable_sort(proposals.begin(), proposals.end(),
                     [](const SpareProposal& a, const SpareProposal& b) {
                         return std::tuple(!a.samePart, !a.apart, a.apart.value_or(Force())) <
                                std::tuple(!b.samePart, !b.apart, b.apart.value_or(Force()));
                     });
    return proposals;
}

} // namespace coilbook
