#include "core/services/round.h"

#include "core/domain/current_readings.h"
#include "core/domain/fitting_spans.h"
#include "core/domain/history.h"
#include "core/services/round_start.h"
#include "core/support/text.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace coilbook {

namespace {

/// A median of fewer springs says nothing about a set.
constexpr std::size_t kFewestForMedian = 3;

/// A moment of the engine: a day and a count of races.
auto momentOf(const QDate& on, int races) {
    return std::tuple(on.toJulianDay(), races);
}

/// Finds which spring stands where at one moment.
class FittedSprings {
public:
    FittedSprings(const std::vector<FittingSpan>& spans, const Inspection& inspection)
        : m_spans(spans)
        , m_now(momentOf(inspection.inspectedOn, inspection.engineRaces)) {}

    std::optional<SpringId> at(const Place& place) const {
        std::optional<SpringId> found;
        const FittingSpan* later = nullptr;
        bool earlier = false;
        for (const FittingSpan& span : m_spans) {
            if (span.place != place) {
                continue;
            }
            if (momentOf(span.fittedOn, span.fittedRaces) > m_now) {
                later = later == nullptr ? &span : later;
            } else {
                earlier = true;
                if (!hasEnded(span)) {
                    found = span.spring;
                }
            }
        }
        // Before all that is written of a place, its first spring stood there: earlier history is
        // being added, and its baseline moves back.
        return !found && !earlier && later != nullptr ? std::optional(later->spring) : found;
    }

private:
    bool hasEnded(const FittingSpan& span) const {
        return span.endedRaces && momentOf(span.endedOn, *span.endedRaces) <= m_now;
    }

    const std::vector<FittingSpan>& m_spans;
    std::tuple<qint64, int> m_now;
};

/// The means of one spring over the inspections, in order.
std::map<SpringId, std::map<std::size_t, std::vector<Force>>>
countingHits(const EngineLog& log, const std::vector<CurrentHit>& hits) {
    std::map<SpringId, std::map<std::size_t, std::vector<Force>>> result;
    for (const CurrentHit& hit : hits) {
        if (!hit.crossedOut) {
            const Reading& reading = log.readings[hit.row];
            result[reading.spring][hit.inspection].push_back(reading.value.force());
        }
    }
    return result;
}

Force meanOf(const std::vector<Force>& values) {
    Force sum;
    for (const Force value : values) {
        sum = sum + value;
    }
    return sum / static_cast<double>(values.size());
}

std::optional<Force> medianOf(std::vector<Force> values) {
    if (values.size() < kFewestForMedian) {
        return std::nullopt;
    }
    std::sort(values.begin(), values.end());
    const std::size_t middle = values.size() / 2;
    return values.size() % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2.0;
}

/// Fills in what the logbook says of the spring that stands at each stop.
class StopFiller {
public:
    StopFiller(const EngineLog& log, const Inspection& inspection)
        : m_log(log)
        , m_hits(currentHits(log))
        , m_counting(countingHits(log, m_hits)) {
        const auto at = std::find(log.inspections.begin(), log.inspections.end(), inspection);
        m_index = static_cast<std::size_t>(std::distance(log.inspections.begin(), at));
        for (const Sitting& sitting : log.sittings) {
            if (sitting.inspection == inspection.id) {
                m_sittings.insert(sitting.id);
            }
        }
        const QDate asOf = std::max(newestDay(log), inspection.inspectedOn);
        const std::vector<FittingSpan> spans = fittingSpans(log, m_hits, asOf);
        const FittedSprings fitted(spans, inspection);
        for (const Place& place : log.engine.layout.places()) {
            m_fitted[place] = fitted.at(place);
        }
    }

    void fill(RoundStop& stop) const {
        const auto fitted = m_fitted.find(stop.place);
        if (fitted == m_fitted.end() || !fitted->second) {
            stop.label = freeLabel(stop.place);
            return;
        }
        stop.spring = fitted->second;
        for (const Spring& spring : m_log.springs) {
            if (spring.id == *stop.spring) {
                stop.label = spring.label;
            }
        }
        fillHits(stop);
        fillMeans(stop);
    }

private:
    void fillHits(RoundStop& stop) const {
        for (const CurrentHit& hit : m_hits) {
            const Reading& reading = m_log.readings[hit.row];
            if (hit.inspection == m_index && reading.spring == *stop.spring) {
                stop.hits.push_back({reading.id, reading.hit, reading.value, reading.retest,
                                     hit.crossedOut, hit.row != hit.original,
                                     m_log.readings[hit.original].id});
            }
        }
        // Withdrawn rows keep their number: it was used, and the logbook shows it.
        for (const Reading& reading : m_log.readings) {
            if (reading.spring == *stop.spring && m_sittings.contains(reading.sitting)) {
                stop.nextHit = std::max(stop.nextHit, reading.hit + 1);
            }
        }
    }

    void fillMeans(RoundStop& stop) const {
        const auto found = m_counting.find(*stop.spring);
        if (found == m_counting.end()) {
            return;
        }
        const Inspection* before = nullptr;
        const auto isNewLevel = [&](const Inspection& at) {
            return before != nullptr &&
                   isLevelChanged(m_log.levelChanges, *stop.spring, *before, at);
        };
        for (const auto& [index, values] : found->second) {
            if (index >= m_index) {
                break;
            }
            const Inspection& inspection = m_log.inspections[index];
            if (isNewLevel(inspection)) {
                stop.levelAdded = stop.levelAdded + (meanOf(values) - stop.previous->mean);
            }
            before = &inspection;
            stop.previous =
                RoundMean{meanOf(values), inspection.inspectedOn, inspection.engineRaces};
            if (!stop.baseline) {
                stop.baseline = stop.previous;
            }
        }
        stop.newLevel = isNewLevel(m_log.inspections[m_index]);
    }

    QString freeLabel(const Place& place) const {
        const QString first = QString::number(place.cylinder.number()) + valveLetter(place.valve);
        QString label = first;
        const auto isTaken = [&](const Spring& spring) {
            return caseKey(spring.label) == caseKey(label);
        };
        for (int next = 2; std::any_of(m_log.springs.begin(), m_log.springs.end(), isTaken);
             ++next) {
            label = QStringLiteral("%1-%2").arg(first).arg(next);
        }
        return label;
    }

    const EngineLog& m_log;
    std::vector<CurrentHit> m_hits;
    std::map<SpringId, std::map<std::size_t, std::vector<Force>>> m_counting;
    std::size_t m_index = 0;
    std::set<SittingId> m_sittings;
    std::map<Place, std::optional<SpringId>> m_fitted;
};

std::optional<Force> medianWithout(const std::vector<RoundStop>& stops, const RoundStop& left) {
    std::vector<Force> now;
    std::vector<Force> before;
    for (const RoundStop& stop : stops) {
        if (stop.place == left.place) {
            continue;
        }
        if (const std::optional<Force> mean = stop.mean()) {
            now.push_back(*mean);
        }
        if (stop.previous) {
            before.push_back(stop.previous->mean);
        }
    }
    const std::optional<Force> median = medianOf(std::move(now));
    return median ? median : medianOf(std::move(before));
}

} // namespace

bool RoundStop::hasRetest() const {
    return std::any_of(hits.begin(), hits.end(), [](const RoundHit& hit) { return hit.retest; });
}

std::optional<Force> RoundStop::mean() const {
    std::vector<Force> values;
    for (const RoundHit& hit : hits) {
        if (!hit.crossedOut) {
            values.push_back(hit.value.force());
        }
    }
    return values.empty() ? std::nullopt : std::optional(meanOf(values));
}

Round::Round(const EngineLog& log, const InspectionId& inspection, RoundOrder order,
             std::optional<Place> only)
    : m_springs(log.springs) {
    if (const Inspection* found = inspectionWith(log, inspection)) {
        m_inspection = *found;
    }
    const StopFiller filler(log, m_inspection);
    for (const Place& place : placesInOrder(log.engine.layout, order)) {
        RoundStop stop;
        stop.place = place;
        filler.fill(stop);
        m_stops.push_back(std::move(stop));
    }
    for (RoundStop& stop : m_stops) {
        stop.medianOfOthers = medianWithout(m_stops, stop);
    }
    if (only) {
        std::erase_if(m_stops, [&](const RoundStop& stop) { return stop.place != *only; });
    }
}

std::optional<std::size_t> Round::indexOf(const Place& place) const {
    for (std::size_t i = 0; i < m_stops.size(); ++i) {
        if (m_stops[i].place == place) {
            return i;
        }
    }
    return std::nullopt;
}

std::optional<std::size_t> Round::firstUntested() const {
    const auto found = std::find_if_not(m_stops.begin(), m_stops.end(),
                                        [](const RoundStop& stop) { return stop.isTested(); });
    return found == m_stops.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(std::distance(m_stops.begin(), found)));
}

std::optional<std::size_t> Round::untestedAfter(std::size_t index) const {
    for (std::size_t i = index + 1; i < m_stops.size(); ++i) {
        if (!m_stops[i].isTested()) {
            return i;
        }
    }
    return std::nullopt;
}

std::size_t Round::tested() const {
    return static_cast<std::size_t>(std::count_if(
        m_stops.begin(), m_stops.end(), [](const RoundStop& stop) { return stop.isTested(); }));
}

std::optional<Place> Round::lastRead() const {
    std::optional<Place> place;
    ReadingId newest;
    for (const RoundStop& stop : m_stops) {
        for (const RoundHit& hit : stop.hits) {
            if (!place || hit.taken > newest) {
                place = stop.place;
                newest = hit.taken;
            }
        }
    }
    return place;
}

std::optional<SpringId> Round::springLabelled(const QString& label) const {
    const auto found = std::find_if(m_springs.begin(), m_springs.end(), [&](const Spring& spring) {
        return caseKey(spring.label) == caseKey(normalised(label));
    });
    return found == m_springs.end() ? std::nullopt : std::optional(found->id);
}

} // namespace coilbook
