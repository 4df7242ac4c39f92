#include "core/assessment/spring_lives.h"

#include "core/assessment/wear_estimate.h"
#include "core/domain/history.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace coilbook {

namespace {

/// What one engine tells of a spring.
struct Part {
    QDate from;
    std::vector<LifeStay> stays;
    std::vector<std::pair<int, Force>> losses; ///< races run and loss at each inspection
    int races = 0;
    bool fitted = false;
    Force limit;
};

Part partOf(std::size_t index, const EngineHistory& history,
            const std::optional<WearEstimate>& wear, const Force& limit) {
    const HistoryLife& life = history.lives[index];
    Part part;
    part.from = life.spans.front().fittedOn;
    part.fitted = life.fitted;
    part.races = life.exposureNow;
    part.limit = limit;
    for (const FittingSpan& span : life.spans) {
        part.stays.push_back({history.engine, span.place, span.fittedOn, span.endedOn,
                              span.endedRaces.value_or(history.racesNow) - span.fittedRaces});
    }
    const std::vector<Force> estimated = wear ? wear->lossesOf(index) : std::vector<Force>();
    for (std::size_t c = 0; c < life.cells.size(); ++c) {
        const bool isTold = c < estimated.size();
        part.losses.emplace_back(life.cells[c].exposure,
                                 isTold ? estimated[c] : measuredLossAt(life, c));
    }
    return part;
}

/// Puts the parts of one spring together.
void finish(SpringLife& life, std::vector<Part> parts) {
    std::sort(parts.begin(), parts.end(),
              [](const Part& a, const Part& b) { return a.from < b.from; });
    Force lost;
    bool reached = false;
    for (const Part& part : parts) {
        life.stays.insert(life.stays.end(), part.stays.begin(), part.stays.end());
        if (reached) {
            continue;
        }
        for (const auto& [races, loss] : part.losses) {
            if (lost + loss >= part.limit) {
                life.races += races;
                reached = true;
                break;
            }
        }
        if (!reached) {
            life.races += part.races;
            lost = part.losses.empty() ? lost : lost + part.losses.back().second;
        }
    }
    life.end = reached               ? LifeEnd::ReachedLimit
               : parts.back().fitted ? LifeEnd::Running
                                     : LifeEnd::TakenOut;
}

} // namespace

std::vector<SpringLife> springLives(const std::vector<EngineLog>& logs) {
    std::map<SpringId, SpringLife> lives;
    std::map<SpringId, std::vector<Part>> parts;
    std::set<SpringId> ranElsewhere;
    for (const EngineLog& log : logs) {
        const EngineHistory history = historyOf(log);
        const std::optional<WearEstimate> wear = WearEstimate::of(history, Curves::None);
        for (std::size_t i = 0; i < history.lives.size(); ++i) {
            const HistoryLife& life = history.lives[i];
            parts[life.spring].push_back(partOf(i, history, wear, log.engine.rules.limit));
        }
        for (const Spring& spring : log.springs) {
            lives[spring.id] = {spring.id, spring.label,    spring.part, spring.batch, {},
                                0,         LifeEnd::Running};
        }
        for (const Shelving& shelving : log.shelvings) {
            if (!shelving.withdrawn && shelving.racesBefore.value_or(0) > 0) {
                ranElsewhere.insert(shelving.spring);
            }
        }
    }
    std::vector<SpringLife> result;
    for (auto& [spring, ofSpring] : parts) {
        if (!ranElsewhere.contains(spring)) {
            finish(lives[spring], std::move(ofSpring));
            result.push_back(lives[spring]);
        }
    }
    std::sort(result.begin(), result.end(), [](const SpringLife& a, const SpringLife& b) {
        return std::tie(a.label, a.spring) < std::tie(b.label, b.spring);
    });
    return result;
}

LifeComparison compareLives(const std::vector<SpringLife>& lives, LifeGrouping grouping) {
    using Key = std::pair<QString, std::optional<Valve>>;
    const auto keyOf = [&](const SpringLife& life) -> Key {
        switch (grouping) {
        case LifeGrouping::Part:
            return {life.part, std::nullopt};
        case LifeGrouping::Batch:
            return {life.batch, std::nullopt};
        case LifeGrouping::Engine:
            return {life.stays.back().engine, std::nullopt};
        case LifeGrouping::Valve:
            return {QString(), life.stays.back().place.valve};
        }
        return {};
    };
    std::map<Key, std::vector<statistics::Lifetime>> groups;
    for (const SpringLife& life : lives) {
        groups[keyOf(life)].push_back(
            {static_cast<double>(life.races), life.end == LifeEnd::ReachedLimit});
    }
    LifeComparison comparison;
    std::vector<std::vector<statistics::Lifetime>> all;
    for (const auto& [key, ofGroup] : groups) {
        LifeGroup group;
        std::tie(group.name, group.valve) = key;
        group.running = static_cast<std::size_t>(
            std::count_if(ofGroup.begin(), ofGroup.end(),
                          [](const statistics::Lifetime& life) { return !life.ended; }));
        group.curve = statistics::kaplanMeier(ofGroup);
        comparison.groups.push_back(std::move(group));
        all.push_back(ofGroup);
    }
    comparison.difference = statistics::logRank(all);
    return comparison;
}

} // namespace coilbook
