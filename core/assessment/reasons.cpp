#include "core/assessment/reasons.h"

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

/// The reason that tells what the spring lost, or why that cannot be told.
Reason lossReason(const SpringAssessment& spring, ReasonKind about) {
    switch (about) {
    case ReasonKind::LossAndRate:
        return {about, {spring.loss->mean, spring.lossPerRace->mean}, {spring.exposure}};
    case ReasonKind::MeansOnly:
        return {about, {*spring.lossMeanOnly, *spring.lossPerRaceMeanOnly}, {spring.exposure}};
    case ReasonKind::FitFailed:
        return {about, {spring.measuredLoss.value_or(Force())}, {}};
    default:
        return {about, {}, {}};
    }
}

void addPastLimit(SpringAssessment& spring, const JudgingRules& rules) {
    if (spring.pastBy != PastBy::Estimate) {
        spring.reasons.push_back(
            {ReasonKind::PastByMeasurement, {*spring.measuredLoss, rules.limit}, {}});
    }
    // A line that bends to a reading off its trend does not bear that reading out.
    const bool bentToIt = spring.pastBy == PastBy::Both && spring.offTrend;
    if (spring.pastBy != PastBy::Measured && spring.loss && !bentToIt) {
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

} // namespace

void giveReasons(SpringAssessment& spring, const ReasonBasis& basis, const HistoryLife& life,
                 const EngineHistory& history, const JudgingRules& rules) {
    spring.reasons = {lossReason(spring, basis.about)};
    if (spring.standing == Standing::PastLimit) {
        addPastLimit(spring, rules);
    } else if (spring.standing == Standing::Due) {
        spring.reasons.push_back({ReasonKind::DueWithin, {rules.limit}, {rules.racesAhead}});
    }
    addRacesLeft(spring, rules);
    if (basis.offTrend) {
        spring.reasons.push_back(
            {ReasonKind::OffTrend, {basis.offTrend->newest, basis.offTrend->lowestAllowed}, {}});
    }
    if (auto overRev = overRevReason(life, history)) {
        spring.reasons.push_back(*std::move(overRev));
    }
}

} // namespace coilbook
