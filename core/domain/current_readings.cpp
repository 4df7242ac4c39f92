#include "core/domain/current_readings.h"

#include <algorithm>
#include <tuple>
#include <unordered_map>

namespace coilbook {

namespace {

using RowIndex = std::unordered_map<ReadingId, std::size_t, IdHash<ReadingTag>>;

/// Follows `amends` back to the row as first taken. A chain whose original is missing has none.
std::optional<std::size_t> originalOf(const EngineLog& log, const RowIndex& rows, std::size_t row) {
    // A chain cannot be longer than the table; the bound keeps a damaged one from going round.
    for (std::size_t step = 0; step <= log.readings.size(); ++step) {
        const Reading& reading = log.readings[row];
        if (!reading.amends) {
            return row;
        }
        const auto earlier = rows.find(*reading.amends);
        if (earlier == rows.end()) {
            return std::nullopt;
        }
        row = earlier->second;
    }
    return std::nullopt;
}

/// For each row as first taken the row now in force (the amendment that arrived last).
std::vector<std::size_t> rowsInForce(const EngineLog& log) {
    RowIndex rows;
    rows.reserve(log.readings.size());
    for (std::size_t i = 0; i < log.readings.size(); ++i) {
        rows.emplace(log.readings[i].id, i);
    }
    std::vector<std::size_t> newest(log.readings.size());
    for (std::size_t i = 0; i < newest.size(); ++i) {
        newest[i] = i;
    }
    for (std::size_t i = 0; i < log.readings.size(); ++i) {
        const std::optional<std::size_t> original = originalOf(log, rows, i);
        if (original && log.readings[newest[*original]].id < log.readings[i].id) {
            newest[*original] = i;
        }
    }
    return newest;
}

void crossOutWhatWasRetested(const EngineLog& log, std::vector<CurrentHit>& hits) {
    for (auto first = hits.begin(); first != hits.end();) {
        const SpringId spring = log.readings[first->row].spring;
        const auto last = std::find_if(first, hits.end(), [&](const CurrentHit& hit) {
            return hit.inspection != first->inspection || log.readings[hit.row].spring != spring;
        });
        const auto isRetest = [&](const CurrentHit& hit) {
            return log.readings[hit.row].retest;
        };
        if (std::any_of(first, last, isRetest)) {
            std::for_each(first, last, [&](CurrentHit& hit) { hit.crossedOut = !isRetest(hit); });
        }
        first = last;
    }
}

} // namespace

std::vector<CurrentHit> currentHits(const EngineLog& log) {
    std::unordered_map<InspectionId, std::size_t, IdHash<InspectionTag>> inspections;
    for (std::size_t i = 0; i < log.inspections.size(); ++i) {
        inspections.emplace(log.inspections[i].id, i);
    }

    struct SittingPosition {
        std::size_t sitting;
        std::size_t inspection;
    };

    std::unordered_map<SittingId, SittingPosition, IdHash<SittingTag>> sittings;
    for (std::size_t i = 0; i < log.sittings.size(); ++i) {
        const auto inspection = inspections.find(log.sittings[i].inspection);
        if (inspection != inspections.end()) {
            sittings.emplace(log.sittings[i].id, SittingPosition{i, inspection->second});
        }
    }

    const std::vector<std::size_t> newest = rowsInForce(log);
    std::vector<CurrentHit> hits;
    hits.reserve(log.readings.size());
    for (std::size_t i = 0; i < log.readings.size(); ++i) {
        if (log.readings[i].amends || log.readings[newest[i]].kind == ReadingKind::Withdrawal) {
            continue;
        }
        const auto where = sittings.find(log.readings[newest[i]].sitting);
        if (where != sittings.end()) {
            hits.push_back({where->second.inspection, where->second.sitting, newest[i], i, false});
        }
    }
    std::sort(hits.begin(), hits.end(), [&](const CurrentHit& a, const CurrentHit& b) {
        const Reading& left = log.readings[a.row];
        const Reading& right = log.readings[b.row];
        return std::tie(a.inspection, left.place, left.spring, left.hit, left.id) <
               std::tie(b.inspection, right.place, right.spring, right.hit, right.id);
    });
    crossOutWhatWasRetested(log, hits);
    return hits;
}

} // namespace coilbook
