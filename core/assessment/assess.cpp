#include "core/assessment/assessment.h"
#include "core/assessment/odds_ahead.h"
#include "core/assessment/reasons.h"
#include "core/assessment/spring_assessment.h"
#include "core/assessment/status_ladder.h"
#include "core/assessment/wear_estimate.h"

#include <algorithm>

namespace coilbook {

namespace {

constexpr double kOffTrendAlarm = 3.0; ///< z of the newest reading against the spring's history

std::size_t inspectionsWithReadings(const EngineHistory& history) {
    std::vector<bool> read(history.inspections.size(), false);
    for (const HistoryLife& life : history.lives) {
        for (const HistoryCell& cell : life.cells) {
            read[cell.inspection] = true;
        }
    }
    return static_cast<std::size_t>(std::count(read.begin(), read.end(), true));
}

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
        spring.measuredLoss = measuredLossAt(life, life.cells.size() - 1);
    }
    return spring;
}

/// Fills in what the model has to say and tells how much that is.
ReasonKind estimate(SpringAssessment& spring, const WearEstimate::LifeFigures& figures,
                    const HistoryLife& life, const JudgingRules& rules) {
    constexpr std::size_t kProvisionalUpTo = 3;
    spring.loss = figures.loss;
    spring.lossPerRace = figures.lossPerRace;
    spring.pPastLimit = figures.odds.front();
    spring.pDue = oddsDueWithin(figures.odds, rules.racesAhead);
    spring.racesLeft = racesLeftBy(figures.odds);
    spring.offTrend = figures.offTrendScore && *figures.offTrendScore >= kOffTrendAlarm;
    spring.fittedBaseline = figures.fittedBaseline;
    spring.levelSteps = figures.levelSteps;
    spring.events = figures.events;
    spring.hitsSetAside = figures.hitsSetAside;
    spring.trend = figures.trend;
    spring.projection = figures.projection;
    spring.provisional = life.cells.size() <= kProvisionalUpTo;
    return figures.exposure > 0.0 ? ReasonKind::LossAndRate : ReasonKind::FittedNew;
}

} // namespace

SpringAssessment assessSpring(std::size_t index, const EngineHistory& history,
                              const std::optional<WearEstimate>& wear,
                              const Assessment& assessment) {
    const JudgingRules& rules = assessment.rules;
    const HistoryLife& life = history.lives[index];
    SpringAssessment spring = recordOf(life, history);
    ReasonBasis basis;
    if (life.cells.empty()) {
        basis.about = ReasonKind::NeverRead;
    } else if (wear) {
        basis.figures = wear->figures(index, rules);
        basis.about = estimate(spring, *basis.figures, life, rules);
    } else if (inspectionsWithReadings(history) >= 2) {
        basis.about = ReasonKind::FitFailed;
    }
    const bool hasTrend = basis.figures && life.cells.size() >= 2 && basis.figures->exposure > 0.0;
    const Verdict verdict =
        judge({spring.measuredLoss, spring.pPastLimit, spring.pDue, hasTrend}, rules);
    spring.standing = verdict.standing;
    spring.pastBy = verdict.pastBy;
    giveReasons(spring, basis, life, history, assessment);
    return spring;
}

Assessment assessInspections(const EngineHistory& history, const std::optional<WearEstimate>& wear,
                             const JudgingRules& rules) {
    Assessment assessment;
    assessment.engine = history.engine;
    assessment.asOf = history.asOf;
    assessment.racesNow = history.racesNow;
    assessment.rules = rules;
    for (const HistoryInspection& inspection : history.inspections) {
        assessment.inspections.push_back(
            {inspection.id, inspection.on, inspection.races, std::nullopt, false});
    }
    for (std::size_t i = 0; wear && i < history.inspections.size(); ++i) {
        assessment.inspections[i].shift = wear->shift(i);
        assessment.inspections[i].shifted = wear->isShifted(i);
    }
    return assessment;
}

Assessment assess(const EngineHistory& history, const JudgingRules& rules, Curves curves) {
    const std::optional<WearEstimate> wear = WearEstimate::of(history, curves);
    Assessment assessment = assessInspections(history, wear, rules);
    for (const std::size_t index : fittedLives(history)) {
        assessment.springs.push_back(assessSpring(index, history, wear, assessment));
    }
    return assessment;
}

} // namespace coilbook
