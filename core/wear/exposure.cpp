#include "core/wear/exposure.h"

#include <algorithm>
#include <numeric>

namespace coilbook::wear {

namespace {

/// Laps of a mean race, over the races that have them.
std::optional<double> meanLapsOf(const std::vector<HistoryRace>& races) {
    double laps = 0.0;
    int known = 0;
    for (const HistoryRace& race : races) {
        if (race.laps) {
            laps += *race.laps;
            ++known;
        }
    }
    return laps > 0.0 ? std::optional(laps / known) : std::nullopt;
}

RaceCount endOf(const FittingSpan& span, const RaceCount& to) {
    return span.endedRaces ? RaceCount{span.endedOn, *span.endedRaces} : to;
}

} // namespace

Exposure::Exposure(const EngineHistory& history, int firstRaces)
    : m_firstRaces(firstRaces)
    , m_meanLaps(meanLapsOf(history.races)) {
    if (history.exposureUnit == ExposureUnit::Laps) {
        weighRaces(history);
        m_goesByLaps = m_racesWithoutLaps == 0;
    }
    weighRunning(history);
}

void Exposure::weighRaces(const EngineHistory& history) {
    const int count = history.racesNow - m_firstRaces;
    std::vector<double> worth;
    for (int race = m_firstRaces + 1; race <= history.racesNow; ++race) {
        const auto found =
            std::find_if(history.races.begin(), history.races.end(),
                         [&](const HistoryRace& known) { return known.number == race; });
        if (found != history.races.end() && found->laps && m_meanLaps) {
            worth.push_back(*found->laps / *m_meanLaps);
        }
    }
    m_racesWithoutLaps = count - static_cast<int>(worth.size());
    if (m_racesWithoutLaps == 0) {
        m_races = std::move(worth);
    }
}

void Exposure::weighRunning(const EngineHistory& history) {
    constexpr double kMilli = 1e-3;
    for (const HistoryRunning& running : history.running) {
        if (running.raceThousandths) {
            m_running.push_back({running.on, *running.raceThousandths * kMilli});
        } else if (running.laps && m_meanLaps) {
            m_running.push_back({running.on, *running.laps / *m_meanLaps});
        } else {
            m_leavesRunningOut = true;
        }
    }
}

std::optional<double> Exposure::worthOf(const std::optional<int>& laps) const {
    return m_goesByLaps && m_meanLaps && laps ? std::optional(*laps / *m_meanLaps) : std::nullopt;
}

double Exposure::racesBetween(int from, int to) const {
    if (to <= from) {
        return 0.0;
    }
    if (m_races.empty()) {
        return static_cast<double>(to - from);
    }
    return std::accumulate(m_races.begin() + (from - m_firstRaces),
                           m_races.begin() + (to - m_firstRaces), 0.0);
}

double Exposure::runningBetween(const QDate& from, const QDate& to) const {
    double worth = 0.0;
    for (const Ran& ran : m_running) {
        worth += ran.on > from && ran.on <= to ? ran.worth : 0.0;
    }
    return worth;
}

double Exposure::between(const RaceCount& from, const RaceCount& to) const {
    return racesBetween(from.races, to.races) + runningBetween(from.on, to.on);
}

double Exposure::whileFitted(const std::vector<FittingSpan>& spans, const RaceCount& from,
                             const RaceCount& to) const {
    double exposure = runningWhileFitted(spans, from, to);
    for (const FittingSpan& span : spans) {
        exposure += racesBetween(std::max(from.races, span.fittedRaces),
                                 std::min(to.races, endOf(span, to).races));
    }
    return exposure;
}

double Exposure::runningWhileFitted(const std::vector<FittingSpan>& spans, const RaceCount& from,
                                    const RaceCount& to) const {
    double exposure = 0.0;
    for (const FittingSpan& span : spans) {
        exposure +=
            runningBetween(std::max(from.on, span.fittedOn), std::min(to.on, endOf(span, to).on));
    }
    return exposure;
}

} // namespace coilbook::wear
