#include "core/assessment/reasons.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace coilbook {

namespace {

/// The reason that tells what the spring lost, or why that cannot be told.
Reason lossReason(const SpringAssessment& spring, const ReasonBasis& basis) {
    constexpr double kMilli = 1e3;
    switch (basis.about) {
    case ReasonKind::LossAndRate: {
        Reason reason{
            basis.about, {spring.loss->mean, spring.lossPerRace->mean}, {spring.exposure}};
        if (basis.figures->running > 0.0) {
            reason.counts.emplace_back(
                static_cast<int>(std::lround(kMilli * basis.figures->running)));
        }
        return reason;
    }
    case ReasonKind::FitFailed:
        return {basis.about, {spring.measuredLoss.value_or(Force())}, {}};
    default:
        return {basis.about, {}, {}};
    }
}

void addPastLimit(SpringAssessment& spring, const JudgingRules& rules) {
    if (spring.pastBy != PastBy::Estimate) {
        spring.reasons.push_back(
            {ReasonKind::PastByMeasurement, {*spring.measuredLoss, rules.limit}, {}});
    }
    // An estimate that follows a reading off its trend does not bear that reading out.
    const bool followsIt = spring.pastBy == PastBy::Both && spring.offTrend;
    if (spring.pastBy != PastBy::Measured && spring.loss && !followsIt) {
        spring.reasons.push_back(
            {ReasonKind::PastByEstimate, {spring.loss->mean, rules.limit}, {}});
    }
    if (spring.pastBy == PastBy::Measured) {
        spring.reasons.push_back({ReasonKind::TestAgainBeforeSwapping, {}, {}});
    }
}

void addRacesLeft(SpringAssessment& spring, const JudgingRules& rules) {
    const bool pastAnyway = spring.pastBy && *spring.pastBy != PastBy::Measured;
    if (!spring.racesLeft || pastAnyway) {
        return;
    }
    const RacesLeft& left = *spring.racesLeft;
    if (left.p10) {
        spring.reasons.push_back(
            {ReasonKind::ReachesLimit, {rules.limit}, {left.p10, left.median, left.p90}});
    } else {
        spring.reasons.push_back({ReasonKind::NotWithinHorizon, {rules.limit}, {}});
    }
}

const HistoryCell& cellAt(const HistoryLife& life, std::size_t inspection) {
    const auto cell =
        std::find_if(life.cells.begin(), life.cells.end(), [&](const HistoryCell& candidate) {
            return candidate.inspection == inspection;
        });
    Q_ASSERT(cell != life.cells.end());
    return *cell;
}

/// Who says that a reading is none: the model, or the user in one way or the other.
ReasonKind misreadKind(const EventFinding& event, const HistoryCell& cell) {
    if (!event.byUser) {
        return ReasonKind::MisreadSetAside;
    }
    return cell.judgement == ReadingJudgement::DropDenied ? ReasonKind::DropDenied
                                                          : ReasonKind::SetAsideByUser;
}

/// From which reading on the measured loss starts again, and after what work.
void addLevelChanges(SpringAssessment& spring, const HistoryLife& life,
                     const EngineHistory& history) {
    for (std::size_t c = 1; c < life.cells.size(); ++c) {
        if (!life.cells[c].newLevel) {
            continue;
        }
        const HistoryInspection& inspection = history.inspections[life.cells[c].inspection];
        LevelChangeKind kind = LevelChangeKind::Other;
        for (const HistoryLevelChange& change : life.levelChanges) {
            kind = change.on <= inspection.on ? change.kind : kind;
        }
        spring.reasons.push_back({ReasonKind::MeasuredAnew,
                                  {measuredLossAt(life, c - 1)},
                                  {inspection.races, static_cast<int>(kind)}});
    }
}

/// What keeps the estimate from going by all that the engine ran.
void addUncounted(SpringAssessment& spring, const ReasonBasis& basis) {
    if (basis.figures && basis.figures->racesWithoutLaps > 0) {
        spring.reasons.push_back({ReasonKind::LapsMissing, {}, {basis.figures->racesWithoutLaps}});
    }
    if (basis.figures && basis.figures->leavesRunningOut) {
        spring.reasons.push_back({ReasonKind::RunningLeftOut, {}, {}});
    }
}

/// What was set aside and what befell the spring.
void addEvents(SpringAssessment& spring, const ReasonBasis& basis, const HistoryLife& life,
               const EngineHistory& history) {
    if (spring.provisional && spring.inspections > 1) {
        spring.reasons.push_back({ReasonKind::Provisional, {}, {}});
    }
    if (!spring.hitsSetAside.empty()) {
        spring.reasons.push_back(
            {ReasonKind::HitsSetAside, {}, {static_cast<int>(spring.hitsSetAside.size())}});
    }
    bool newestExplained = false;
    for (std::size_t e = 0; e < spring.events.size(); ++e) {
        const EventFinding& event = spring.events[e];
        const int races = history.inspections[event.inspection].races;
        const Force size = basis.figures->eventSizes[e];
        const HistoryCell& cell = cellAt(life, event.inspection);
        newestExplained = newestExplained || event.inspection == life.cells.back().inspection;
        switch (event.kind) {
        case EventFinding::Kind::Misread:
            spring.reasons.push_back({misreadKind(event, cell), {cell.mean(), size}, {races}});
            break;
        case EventFinding::Kind::Drop:
            spring.reasons.push_back(
                {event.byUser ? ReasonKind::DropConfirmed : ReasonKind::SuddenDrop,
                 {size},
                 {races}});
            break;
        case EventFinding::Kind::PendingDrop:
            spring.reasons.push_back(
                {ReasonKind::PendingDrop,
                 {size},
                 {static_cast<int>(std::lround(100.0 * event.dropProbability))}});
            break;
        }
    }
    for (const HistoryCell& cell : life.cells) {
        if (cell.judgement == ReadingJudgement::Kept) {
            spring.reasons.push_back({ReasonKind::ReadingKept,
                                      {cell.mean()},
                                      {history.inspections[cell.inspection].races}});
        }
    }
    if (spring.offTrend && !newestExplained) {
        spring.reasons.push_back({ReasonKind::OffTrend, {*spring.latest}, {}});
    }
}

/// That whole inspections in which the spring was read are off: the newest one first.
void addShifts(SpringAssessment& spring, const HistoryLife& life, const Assessment& assessment) {
    for (auto cell = life.cells.rbegin(); cell != life.cells.rend(); ++cell) {
        const InspectionAssessment& inspection = assessment.inspections[cell->inspection];
        if (!inspection.shifted || !inspection.shift) {
            continue;
        }
        const bool newest = cell->inspection + 1 == assessment.inspections.size();
        spring.reasons.push_back(
            {newest ? ReasonKind::InspectionShifted : ReasonKind::EarlierShifted,
             {inspection.shift->mean},
             {inspection.races}});
    }
}

/// The newest over-revved race that the spring ran after its last reading but one: it was not read
/// since, or once.
std::optional<Reason> overRevReason(const HistoryLife& life, const EngineHistory& history) {
    if (life.cells.empty()) {
        return std::nullopt;
    }
    const auto countAt = [&](std::size_t fromNewest) {
        return history.inspections[life.cells[life.cells.size() - 1 - fromNewest].inspection].races;
    };
    const int newest = countAt(0);
    const int before = life.cells.size() > 1 ? countAt(1) : newest;
    int race = before;
    for (const HistoryRace& candidate : history.races) {
        const bool ran = racesWhileFitted(life.spans, candidate.number - 1, candidate.number) > 0;
        if (candidate.overRev && ran) {
            race = std::max(race, candidate.number);
        }
    }
    if (race == before) {
        return std::nullopt;
    }
    return Reason{ReasonKind::OverRev, {}, {race, race > newest ? 0 : 1}};
}

/// What the over-revs cost by the trend's own step, the newest one first; one that the spring was
/// not tested after, or once, says so besides.
void addOverRevs(SpringAssessment& spring, const ReasonBasis& basis, const HistoryLife& life,
                 const EngineHistory& history) {
    std::optional<Reason> newest = overRevReason(life, history);
    std::vector<Reason> costs;
    if (basis.figures) {
        for (const WearEstimate::OverRevCost& overRev : basis.figures->overRevs) {
            const std::vector<Force> cost{overRev.loss.mean, overRev.loss.low90,
                                          overRev.loss.high90};
            if (newest && newest->counts.front() == overRev.race) {
                newest->forces = cost;
            } else {
                costs.push_back({ReasonKind::OverRevCost, cost, {overRev.race}});
            }
        }
    }
    if (newest) {
        spring.reasons.push_back(*std::move(newest));
    }
    spring.reasons.insert(spring.reasons.end(), costs.rbegin(), costs.rend());
}

} // namespace

void giveReasons(SpringAssessment& spring, const ReasonBasis& basis, const HistoryLife& life,
                 const EngineHistory& history, const Assessment& assessment) {
    const JudgingRules& rules = assessment.rules;
    spring.reasons = {lossReason(spring, basis)};
    addLevelChanges(spring, life, history);
    if (spring.standing == Standing::PastLimit) {
        addPastLimit(spring, rules);
    } else if (spring.standing == Standing::Due) {
        spring.reasons.push_back({ReasonKind::DueWithin, {rules.limit}, {rules.racesAhead}});
    }
    addRacesLeft(spring, rules);
    addEvents(spring, basis, life, history);
    addShifts(spring, life, assessment);
    addUncounted(spring, basis);
    addOverRevs(spring, basis, life, history);
}

} // namespace coilbook
