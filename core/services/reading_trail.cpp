#include "core/services/reading_trail.h"

#include "core/domain/current_readings.h"
#include "core/services/round_start.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_map>

namespace coilbook {

namespace {

using Chain = std::vector<std::size_t>; ///< rows of one hit, in order of arrival

/// The forms of each hit. Rows stand in order of arrival, so an original precedes its amendments.
std::vector<Chain> chainsOf(const EngineLog& log) {
    std::unordered_map<ReadingId, std::size_t, IdHash<ReadingTag>> chainOfRow;
    std::vector<Chain> chains;
    for (std::size_t row = 0; row < log.readings.size(); ++row) {
        const Reading& reading = log.readings[row];
        const auto earlier = reading.amends ? chainOfRow.find(*reading.amends) : chainOfRow.end();
        if (earlier != chainOfRow.end()) {
            chainOfRow.emplace(reading.id, earlier->second);
            chains[earlier->second].push_back(row);
        } else if (!reading.amends) {
            chainOfRow.emplace(reading.id, chains.size());
            chains.push_back({row});
        }
    }
    return chains;
}

/// Turns rows into entries.
class Trail {
public:
    explicit Trail(const EngineLog& log)
        : m_log(log) {
        for (const CurrentHit& hit : currentHits(log)) {
            m_crossedOut[hit.row] = hit.crossedOut;
        }
        for (std::size_t i = 0; i < log.sittings.size(); ++i) {
            m_sittings.emplace(log.sittings[i].id, i);
        }
    }

    void add(const Chain& chain, const SpringId& spring) {
        for (std::size_t i = 0; i < chain.size(); ++i) {
            const Reading& reading = m_log.readings[chain[i]];
            const Reading* next = i + 1 < chain.size() ? &m_log.readings[chain[i + 1]] : nullptr;
            if (reading.spring == spring && reading.kind != ReadingKind::Withdrawal) {
                addRow(chain[i], next);
            }
        }
    }

    std::vector<TrailEntry> sorted() {
        std::stable_sort(m_entries.begin(), m_entries.end(),
                         [](const TrailEntry& a, const TrailEntry& b) {
                             return std::tuple(b.on.toJulianDay(), b.races, a.hit) <
                                    std::tuple(a.on.toJulianDay(), a.races, b.hit);
                         });
        return std::move(m_entries);
    }

private:
    [[nodiscard]] std::optional<Decision> sayAbout(const InspectionId& inspection,
                                                   const SpringId& spring) const {
        std::optional<Decision> newest;
        for (const Decision& decision : m_log.decisions) {
            if (decision.inspection == inspection && decision.spring == spring) {
                newest = decision;
            }
        }
        return newest && newest->judgement != ReadingJudgement::LeftToModel ? newest : std::nullopt;
    }

    void addRow(std::size_t row, const Reading* next) {
        const Reading& reading = m_log.readings[row];
        const auto sitting = m_sittings.find(reading.sitting);
        if (sitting == m_sittings.end()) {
            return;
        }
        const Sitting& taken = m_log.sittings[sitting->second];
        const Inspection* inspection = inspectionWith(m_log, taken.inspection);
        if (inspection == nullptr) {
            return;
        }
        TrailEntry entry{inspection->id,
                         inspection->inspectedOn,
                         inspection->engineRaces,
                         reading.place,
                         reading.hit,
                         reading.retest,
                         reading.kind == ReadingKind::Correction,
                         reading.value,
                         {},
                         reading.note,
                         ReadingFate::Counts,
                         {},
                         sayAbout(inspection->id, reading.spring)};
        const Tester* tester = taken.tester ? testerWith(m_log, *taken.tester) : nullptr;
        entry.tester = tester != nullptr ? tester->name : QString();
        if (next != nullptr) {
            entry.fate = next->kind == ReadingKind::Withdrawal ? ReadingFate::Withdrawn
                                                               : ReadingFate::Corrected;
            entry.amendedBy = next->author;
        } else if (const auto hit = m_crossedOut.find(row); hit != m_crossedOut.end()) {
            entry.fate = hit->second ? ReadingFate::Retested : ReadingFate::Counts;
        }
        m_entries.push_back(std::move(entry));
    }

    const EngineLog& m_log;
    std::map<std::size_t, bool> m_crossedOut; ///< of the rows in force
    std::unordered_map<SittingId, std::size_t, IdHash<SittingTag>> m_sittings;
    std::vector<TrailEntry> m_entries;
};

} // namespace

std::vector<TrailEntry> readingTrail(const EngineLog& log, const SpringId& spring) {
    Trail trail(log);
    for (const Chain& chain : chainsOf(log)) {
        trail.add(chain, spring);
    }
    return trail.sorted();
}

} // namespace coilbook
