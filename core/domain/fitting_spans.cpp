#include "core/domain/fitting_spans.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>

namespace coilbook {

namespace {

struct FittingMoment {
    QDate on;
    int races = 0;

    auto key() const { return std::pair(on.toJulianDay(), races); }

    friend bool operator<(const FittingMoment& a, const FittingMoment& b) {
        return a.key() < b.key();
    }
};

using Labels = std::unordered_map<SpringId, QString, IdHash<SpringTag>>;

/// What the logbook says of one moment.
struct Statements {
    std::map<Place, std::set<SpringId>> read; ///< springs read at a place
    std::vector<const Fitting*> put;          ///< explicit fittings, in order of arrival
};

using Timeline = std::map<FittingMoment, Statements>;

Timeline timelineOf(const EngineLog& log, const std::vector<CurrentHit>& hits, const QDate& asOf) {
    Timeline timeline;
    for (const CurrentHit& hit : hits) {
        const Inspection& inspection = log.inspections[hit.inspection];
        if (inspection.inspectedOn <= asOf) {
            const Reading& reading = log.readings[hit.row];
            timeline[{inspection.inspectedOn, inspection.engineRaces}].read[reading.place].insert(
                reading.spring);
        }
    }
    for (const Fitting& fitting : log.fittings) {
        if (!fitting.withdrawn && fitting.fittedOn <= asOf) {
            timeline[{fitting.fittedOn, fitting.engineRaces}].put.push_back(&fitting);
        }
    }
    return timeline;
}

/// Walks through the moments and keeps who stands where.
class FittingWalk {
public:
    FittingWalk(const Timeline& timeline, const Labels& labels)
        : m_timeline(timeline)
        , m_labels(labels) {}

    std::vector<FittingSpan> run() {
        for (auto moment = m_timeline.begin(); moment != m_timeline.end(); ++moment) {
            for (const auto& [place, springs] : moment->second.read) {
                for (const SpringId& spring : outThenIn(place, springs, moment)) {
                    stand(spring, place, moment->first);
                }
            }
            for (const Fitting* fitting : moment->second.put) {
                stand(fitting->spring, fitting->place, moment->first);
            }
        }
        std::stable_sort(m_spans.begin(), m_spans.end(),
                         [](const FittingSpan& a, const FittingSpan& b) {
                             return std::tuple(a.place, a.fittedOn.toJulianDay(), a.fittedRaces) <
                                    std::tuple(b.place, b.fittedOn.toJulianDay(), b.fittedRaces);
                         });
        return std::move(m_spans);
    }

private:
    void end(std::size_t span, const FittingMoment& moment) {
        m_spans[span].endedOn = moment.on;
        m_spans[span].endedRaces = moment.races;
        m_at.erase(m_spans[span].place);
        m_of.erase(m_spans[span].spring);
    }

    void stand(const SpringId& spring, const Place& place, const FittingMoment& moment) {
        const auto occupant = m_at.find(place);
        if (occupant != m_at.end()) {
            if (m_spans[occupant->second].spring == spring) {
                return;
            }
            end(occupant->second, moment);
        }
        const auto elsewhere = m_of.find(spring);
        if (elsewhere != m_of.end()) {
            end(elsewhere->second, moment);
        }
        m_at[place] = m_spans.size();
        m_of[spring] = m_spans.size();
        m_spans.push_back({spring, place, moment.on, moment.races, {}, {}});
    }

    QString labelOf(const SpringId& spring) const {
        const auto found = m_labels.find(spring);
        return found == m_labels.end() ? QString() : found->second;
    }

    /// The springs read at one place in one inspection, the one taken out before the one put in.
    std::vector<SpringId> outThenIn(const Place& place, const std::set<SpringId>& springs,
                                    Timeline::const_iterator moment) const {
        std::vector<SpringId> order(springs.begin(), springs.end());
        const auto occupant = m_at.find(place);
        const auto rank = [&](const SpringId& spring) {
            const bool stoodHere =
                occupant != m_at.end() && m_spans[occupant->second].spring == spring;
            return std::tuple(!stoodHere, standsHereNext(spring, place, moment), labelOf(spring));
        };
        if (order.size() > 1) {
            std::sort(order.begin(), order.end(),
                      [&](const SpringId& a, const SpringId& b) { return rank(a) < rank(b); });
        }
        return order;
    }

    /// Whether the next thing that is said of this place after `moment` names this spring. Decides
    /// which of two springs was put in where neither had stood there before.
    bool standsHereNext(const SpringId& spring, const Place& place,
                        Timeline::const_iterator moment) const {
        for (const Fitting* fitting : moment->second.put) {
            if (fitting->place == place) {
                return fitting->spring == spring;
            }
        }
        for (++moment; moment != m_timeline.end(); ++moment) {
            const auto read = moment->second.read.find(place);
            if (read != moment->second.read.end()) {
                return read->second.contains(spring);
            }
            for (const Fitting* fitting : moment->second.put) {
                if (fitting->place == place) {
                    return false; // put in anew: it did not stand there in between
                }
            }
        }
        return false;
    }

    const Timeline& m_timeline;
    const Labels& m_labels;
    std::vector<FittingSpan> m_spans;
    std::map<Place, std::size_t> m_at;
    std::map<SpringId, std::size_t> m_of;
};

} // namespace

std::vector<FittingSpan> fittingSpans(const EngineLog& log, const std::vector<CurrentHit>& hits,
                                      const QDate& asOf) {
    Labels labels;
    for (const Spring& spring : log.springs) {
        labels.emplace(spring.id, spring.label);
    }
    const Timeline timeline = timelineOf(log, hits, asOf);
    return FittingWalk(timeline, labels).run();
}

} // namespace coilbook
