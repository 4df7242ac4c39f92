#include "core/assessment/assessment.h"
#include "core/assessment/line_trend.h"
#include "core/assessment/odds_ahead.h"
#include "core/assessment/reasons.h"
#include "core/assessment/status_ladder.h"

#include <algorithm>

namespace coilbook {

namespace {

/// What is on record, without any model.
SpringAssessment recordOf(const HistoryLife& life, const EngineHistory& history) {
    SpringAssessment spring;
    spring.id = life.spring;
    spring.label = life.label;
    spring.place = life.place;
    spring.inspections = static_cast<int>(life.cells.size());
    spring.exposure = life.exposureNow;
    if (!life.cells.empty()) {
        const HistoryCell& newest = life.cells.back();
        spring.latestOn = history.inspections[newest.inspection].on;
        spring.racesAtLatest = newest.exposure;
        spring.baseline = life.cells.front().mean();
        spring.latest = newest.mean();
        spring.measuredLoss = *spring.baseline - *spring.latest;
    }
    return spring;
}

void fillFrom(SpringAssessment& spring, const LineTrend& trend, const OddsAhead& odds,
              const JudgingRules& rules) {
    spring.loss = trend.lossAt(spring.exposure);
    spring.lossPerRace = trend.lossPerRace();
    spring.pPastLimit = odds.front();
    spring.pDue = oddsDueWithin(odds, rules.racesAhead);
    spring.racesLeft = racesLeftBy(odds);
}

/// Fills in what the trend has to say and tells how much that is.
ReasonKind estimate(SpringAssessment& spring, const HistoryLife& life, const EngineHistory& history,
                    const JudgingRules& rules) {
    if (life.cells.empty()) {
        return ReasonKind::NeverRead;
    }
    if (history.inspections.size() < 2) {
        return ReasonKind::BaselineOnly;
    }
    if (life.exposureNow == 0) {
        // It has run no race, so it has lost nothing, whatever the spread of its readings.
        spring.loss = ForceEstimate{};
        spring.pPastLimit = 0.0;
        return ReasonKind::FittedNew;
    }
    if (life.cells.size() < 2) {
        return ReasonKind::BaselineOnly;
    }
    const auto trend = LineTrend::through(life);
    if (!trend) {
        return ReasonKind::FitFailed;
    }
    const auto odds = trend->oddsAhead(rules.limit, life.exposureNow);
    if (trend->hasSpread() && !odds) {
        return ReasonKind::FitFailed;
    }
    const int ahead = std::clamp(rules.racesAhead, 0, kMostRacesAhead);
    spring.trend = trend->points(0, life.exposureNow);
    spring.projection = trend->points(life.exposureNow, life.exposureNow + ahead);
    if (odds) {
        fillFrom(spring, *trend, *odds, rules);
        return ReasonKind::LossAndRate;
    }
    spring.lossMeanOnly = trend->meanLossAt(life.exposureNow);
    spring.lossPerRaceMeanOnly = trend->meanLossPerRace();
    return ReasonKind::MeansOnly;
}

SpringAssessment assessSpring(const HistoryLife& life, const EngineHistory& history,
                              const JudgingRules& rules) {
    SpringAssessment spring = recordOf(life, history);
    ReasonBasis basis;
    basis.about = estimate(spring, life, history, rules);
    basis.offTrend = findOffTrend(life);
    spring.offTrend = basis.offTrend.has_value();

    const bool hasTrend = basis.about == ReasonKind::LossAndRate;
    const Verdict verdict =
        judge({spring.measuredLoss, spring.pPastLimit, spring.pDue, hasTrend}, rules);
    spring.standing = verdict.standing;
    spring.pastBy = verdict.pastBy;
    giveReasons(spring, basis, life, history, rules);
    return spring;
}

} // namespace

Assessment assess(const EngineHistory& history, const JudgingRules& rules) {
    Assessment assessment;
    assessment.engine = history.engine;
    assessment.asOf = history.asOf;
    assessment.racesNow = history.racesNow;
    assessment.rules = rules;
    for (const HistoryInspection& inspection : history.inspections) {
        assessment.inspections.push_back(
            {inspection.id, inspection.on, inspection.races, std::nullopt, false});
    }
    for (const std::size_t index : fittedLives(history)) {
        assessment.springs.push_back(assessSpring(history.lives[index], history, rules));
    }
    return assessment;
}

} // namespace coilbook
