#include "core/assessment/wear_estimate.h"

#include "core/wear/event_scores.h"
#include "core/wear/exposure.h"
#include "core/wear/joint_ahead.h"
#include "core/wear/loss_functional.h"
#include "core/wear/predicted_reading.h"
#include "core/wear/session_check.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace coilbook {

namespace {

constexpr double kSessionAlarm = 2.0;
constexpr double kLeastShiftLbf = 1.0;

/// Mean and equal-tailed 90 % interval; a bound that the mean lies beyond is set to the mean.
ForceEstimate estimateOf(const wear::Mixture& mixture) {
    const double mean = mixture.mean();
    return {Force::poundsForce(mean), Force::poundsForce(std::min(mixture.quantile(0.05), mean)),
            Force::poundsForce(std::max(mixture.quantile(0.95), mean))};
}

TrendPoint pointOf(double exposure, const wear::Mixture& mixture) {
    const ForceEstimate estimate = estimateOf(mixture);
    return {exposure, estimate.mean, estimate.low90, estimate.high90};
}

/// Whether something other than wear changed the pressure since the life was read last.
bool isAtNewLevel(const HistoryLife& life, const std::vector<HistoryInspection>& inspections) {
    const HistoryInspection& last = inspections[life.cells.back().inspection];
    const auto momentOf = [](const QDate& day, int races) {
        return std::tuple(day.toJulianDay(), races);
    };
    return std::any_of(
        life.levelChanges.begin(), life.levelChanges.end(), [&](const HistoryLevelChange& change) {
            return momentOf(change.on, change.races) >= momentOf(last.on, last.races);
        });
}

} // namespace

std::optional<WearEstimate> WearEstimate::of(const EngineHistory& history, Curves curves) {
    wear::SeasonOfHistory season = wear::seasonOf(history);
    if (season.sessions.size() < 2) {
        return std::nullopt;
    }
    std::optional<wear::Fit> fit = wear::fitSeason(season.season);
    if (!fit) {
        return std::nullopt;
    }
    return WearEstimate(history, std::move(season), std::move(*fit), curves, SessionCheck::Made);
}

std::optional<WearEstimate> WearEstimate::refitted(const EngineHistory& history) const {
    wear::SeasonOfHistory season = wear::seasonOf(history);
    if (season.sessions.size() < 2) {
        return std::nullopt;
    }
    wear::Fit earlier = m_fit;
    earlier.design.events = eventsIn(history, season);
    std::optional<wear::Fit> fit = wear::refit(season.season, std::move(earlier));
    if (!fit) {
        return std::nullopt;
    }
    return WearEstimate(history, std::move(season), std::move(*fit), Curves::None,
                        SessionCheck::LeftOut);
}

/// The events of this fit where another history of the engine has them: a reading more moves lives
/// and cells, and what an event is about is a spring in an inspection.
std::vector<wear::Event> WearEstimate::eventsIn(const EngineHistory& history,
                                                const wear::SeasonOfHistory& season) const {
    std::vector<wear::Event> moved;
    for (wear::Event event : m_fit.design.events) {
        const HistoryLife& life = m_history->lives[m_season.lives[event.life]];
        const InspectionId inspection =
            m_history->inspections[life.cells[event.cell].inspection].id;
        for (std::size_t l = 0; l < season.lives.size(); ++l) {
            const HistoryLife& other = history.lives[season.lives[l]];
            if (other.spring != life.spring) {
                continue;
            }
            for (std::size_t c = 0; c < other.cells.size(); ++c) {
                if (history.inspections[other.cells[c].inspection].id == inspection) {
                    event.life = l;
                    event.cell = c;
                    moved.push_back(event);
                }
            }
        }
    }
    return moved;
}

std::optional<ForceEstimate> WearEstimate::nextReading(std::size_t life,
                                                       std::optional<std::size_t> tester) const {
    const auto position = positionOf(life);
    const std::vector<HistoryInspection>& inspections = m_history->inspections;
    if (!position || inspections.back().races < m_history->racesNow ||
        isAtNewLevel(m_history->lives[life], inspections)) {
        return std::nullopt;
    }
    const auto session = sessionOf(inspections.size() - 1);
    const wear::HitNoise& noise = m_season.testers.at(tester.value_or(m_season.testers.size() - 1));
    const wear::Mixture predicted = wear::predictedReading(
        {m_fitted[*position], session, noise.fixedVariance(1)}, m_season.season, m_fit);
    return ForceEstimate{Force::poundsForce(predicted.quantile(0.5)),
                         Force::poundsForce(predicted.quantile(0.05)),
                         Force::poundsForce(predicted.quantile(0.95))};
}

WearEstimate::WearEstimate(const EngineHistory& history, wear::SeasonOfHistory season,
                           wear::Fit fit, Curves curves, SessionCheck check)
    : m_history(&history)
    , m_season(std::move(season))
    , m_fit(std::move(fit))
    , m_fitted(wear::livesStillFitted(m_season.season))
    , m_posteriors(wear::posteriorsOfLives(m_fitted, m_season.season, m_fit))
    , m_curves(curves == Curves::Drawn ? wear::lossesAtCells(m_fitted, m_season.season, m_fit)
                                       : std::vector<std::vector<wear::Mixture>>())
    , m_starts(curves == Curves::Drawn ? wear::startsOfLives(m_fitted, m_season.season, m_fit)
                                       : std::vector<double>())
    , m_newestScore(check == SessionCheck::Made ? wear::sessionCheck(m_season.season, m_fit)
                                                : std::nullopt) {}

std::optional<std::size_t> WearEstimate::positionOf(std::size_t life) const {
    const auto found = std::find_if(m_fitted.begin(), m_fitted.end(), [&](std::size_t index) {
        return m_season.lives[index] == life;
    });
    return found == m_fitted.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - m_fitted.begin()));
}

std::optional<std::size_t> WearEstimate::sessionOf(std::size_t inspection) const {
    const auto found =
        std::lower_bound(m_season.sessions.begin(), m_season.sessions.end(), inspection);
    if (found == m_season.sessions.end() || *found != inspection) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - m_season.sessions.begin());
}

std::optional<ForceEstimate> WearEstimate::shift(std::size_t inspection) const {
    const auto session = sessionOf(inspection);
    if (!session) {
        return std::nullopt;
    }
    return estimateOf(wear::shiftOf(*session, m_fit));
}

bool WearEstimate::isShifted(std::size_t inspection) const {
    const auto session = sessionOf(inspection);
    if (!session || *session == 0) {
        return false;
    }
    if (*session + 1 == m_season.sessions.size()) {
        return m_newestScore && std::abs(*m_newestScore) >= kSessionAlarm;
    }
    const wear::Mixture shift = wear::shiftOf(*session, m_fit);
    const bool excludesZero = shift.quantile(0.025) > 0.0 || shift.quantile(0.975) < 0.0;
    return excludesZero && std::abs(shift.mean()) >= kLeastShiftLbf;
}

std::optional<WearEstimate::LifeFigures> WearEstimate::figures(std::size_t life,
                                                               const JudgingRules& rules) const {
    const std::optional<std::size_t> found = positionOf(life);
    if (!found) {
        return std::nullopt;
    }
    const std::size_t position = *found;
    const std::size_t index = m_fitted[position];
    const wear::LifePosterior& posterior = m_posteriors[position];
    LifeFigures figures;
    figures.loss = estimateOf(posterior.lossNow());
    figures.lossPerRace = estimateOf(posterior.rate());
    figures.odds = posterior.oddsAhead(rules.limit.inPoundsForce(), rules.racesAhead);
    figures.offTrendScore = wear::offTrendScore(index, m_season.season, m_fit.design, m_fit.atMode);
    figures.exposure = m_season.season.lives[index].xNow;
    figures.running = m_season.runningNow[index];
    figures.racesWithoutLaps = m_season.racesWithoutLaps;
    figures.leavesRunningOut = m_season.leavesRunningOut;
    addEvents(figures, index);
    for (std::size_t k = 0; k < m_season.overRevRaces.size(); ++k) {
        if (m_season.season.lives[index].overRevsNow[k] > 0.0) {
            figures.overRevs.push_back(
                {m_season.overRevRaces[k], estimateOf(wear::overRevCost(k, m_fit))});
        }
    }
    for (const HistoryCell& cell : m_history->lives[life].cells) {
        for (const HistoryHit& hit : cell.hits) {
            if (std::find(m_season.screened.begin(), m_season.screened.end(), hit.reading) !=
                m_season.screened.end()) {
                figures.hitsSetAside.push_back(hit.reading);
            }
        }
    }
    if (!m_curves.empty()) {
        addCurve(figures, position, std::clamp(rules.racesAhead, 0, kMostRacesAhead));
    }
    return figures;
}

std::optional<double> WearEstimate::worthOfLaps(const std::optional<int>& laps) const {
    return wear::Exposure(*m_history, m_history->inspections[m_season.sessions.front()].races)
        .worthOf(laps);
}

WearEstimate::SetAhead WearEstimate::setAhead(const std::vector<std::size_t>& lives, double races,
                                              Force limit) const {
    std::vector<wear::SpringAhead> springs;
    std::vector<std::size_t> asked; // which of `lives` each is
    for (std::size_t i = 0; i < lives.size(); ++i) {
        if (const auto position = positionOf(lives[i])) {
            springs.push_back({m_fitted[*position], 0});
            asked.push_back(i);
        }
    }
    const wear::JointAhead joint(std::move(springs), m_season.season, m_fit, races);
    const std::vector<double> odds = joint.oddsAtLeast(limit.inPoundsForce());
    const std::vector<double> losses = joint.meanLosses();
    SetAhead ahead;
    ahead.odds.resize(lives.size());
    ahead.losses.resize(lives.size());
    for (std::size_t s = 0; s < asked.size(); ++s) {
        ahead.odds[asked[s]] = odds[s];
        ahead.losses[asked[s]] = Force::poundsForce(losses[s]);
    }
    ahead.count = joint.countAtLeast(limit.inPoundsForce());
    return ahead;
}

WearEstimate::SetAhead WearEstimate::newSetAhead(const std::vector<Valve>& valves, double races,
                                                 Force limit) const {
    std::vector<wear::SpringAhead> springs;
    for (const Valve valve : valves) {
        springs.push_back({std::nullopt, valve == Valve::Exhaust ? 1 : 0});
    }
    const wear::JointAhead joint(std::move(springs), m_season.season, m_fit, races);
    SetAhead ahead;
    for (const double odds : joint.oddsAtLeast(limit.inPoundsForce())) {
        ahead.odds.emplace_back(odds);
    }
    for (const double loss : joint.meanLosses()) {
        ahead.losses.emplace_back(Force::poundsForce(loss));
    }
    ahead.count = joint.countAtLeast(limit.inPoundsForce());
    return ahead;
}

std::vector<Force> WearEstimate::lossesOf(std::size_t life) const {
    std::vector<Force> losses;
    const auto found = std::find(m_season.lives.begin(), m_season.lives.end(), life);
    if (found != m_season.lives.end()) {
        const auto index = static_cast<std::size_t>(found - m_season.lives.begin());
        const std::vector<std::vector<wear::Mixture>> ofLives =
            wear::lossesAtCells({index}, m_season.season, m_fit);
        for (const wear::Mixture& loss : ofLives.front()) {
            losses.push_back(Force::poundsForce(loss.mean()));
        }
    }
    return losses;
}

void WearEstimate::addEvents(LifeFigures& figures, std::size_t life) const {
    const wear::Design& design = m_fit.design;
    for (std::size_t e = 0; e < design.events.size(); ++e) {
        const wear::Event& event = design.events[e];
        if (event.life != life) {
            continue;
        }
        const std::size_t session = m_season.season.lives[life].cells[event.cell].session;
        EventFinding finding;
        finding.inspection = m_season.sessions[session];
        finding.byUser = event.byUser;
        if (event.pending) {
            finding.kind = EventFinding::Kind::PendingDrop;
            finding.dropProbability = wear::dropProbability(event);
        } else if (event.kind == wear::Event::Kind::Drop) {
            finding.kind = EventFinding::Kind::Drop;
            finding.dropProbability = 1.0;
        }
        figures.events.push_back(finding);
        figures.eventSizes.push_back(Force::poundsForce(wear::eventSize(e, design, m_fit.atMode)));
    }
}

void WearEstimate::addCurve(LifeFigures& figures, std::size_t position, int racesAhead) const {
    const wear::Life& data = m_season.season.lives[m_fitted[position]];
    figures.fittedBaseline = Force::poundsForce(data.cells.front().mean + m_starts[position]);
    for (const double step : wear::levelStepsOf(m_fitted[position], m_season.season, m_fit)) {
        figures.levelSteps.push_back(Force::poundsForce(step));
    }
    const HistoryLife& life = m_history->lives[m_season.lives[m_fitted[position]]];
    double reached = -1.0; // exposure of the newest point in the model's own measure
    for (std::size_t cell = 0; cell < data.cells.size(); ++cell) {
        if (data.cells[cell].x <= reached) {
            continue; // a second inspection without a race between
        }
        reached = data.cells[cell].x;
        figures.trend.push_back(pointOf(life.cells[cell].exposure, m_curves[position][cell]));
    }
    const wear::LifePosterior& posterior = m_posteriors[position];
    const TrendPoint now = pointOf(life.exposureNow, posterior.lossNow());
    if (data.xNow > reached) {
        figures.trend.push_back(now);
    } else {
        figures.trend.back() = now; // with a pending drop in it
    }
    figures.projection.push_back(now);
    for (int h = 1; h <= racesAhead; ++h) {
        figures.projection.push_back(pointOf(life.exposureNow + h, posterior.lossAhead(h)));
    }
}

} // namespace coilbook
