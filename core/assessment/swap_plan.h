#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/history.h"
#include "core/domain/planned_race.h"

#include <optional>
#include <vector>

namespace coilbook {

/// How sure the plan shall be.
struct PlanQuestion {
    double risk = 0.10;      ///< chance of going past the limit in a race that is accepted
    double certainty = 0.90; ///< of not running out of spares

    bool operator==(const PlanQuestion&) const = default;
};

/// As many coming races as a plan looks at.
inline constexpr std::size_t kMostPlanned = 12;

/// What a coming race asks of the set as it stands, and of a whole new one put in before the next
/// race. Counts and odds are those once the race is run.
struct PlannedRaceOutlook {
    PlannedRace race;
    double racesAhead = 0.0;  ///< from now until it is run, in mean races
    bool lapsCount = false;   ///< by its own laps; else it counts as one race
    std::vector<double> due;  ///< probability of 0, 1, 2 … springs past the limit; empty without
                              ///< estimates
    double expectedDue = 0.0; ///< mean of that
    int enough = 0;           ///< springs that are enough with the certainty asked for
    double expectedDueNew = 0.0; ///< likewise of a new set
    int enoughNew = 0;
    std::optional<Force> lossNewIntake; ///< mean loss of a new spring by then
    std::optional<Force> lossNewExhaust;

    bool operator==(const PlannedRaceOutlook&) const = default;
};

/// One spring of the plan.
struct PlannedSwap {
    SpringId id;
    QString label;
    Place place;
    Standing standing = Standing::NoTrend;
    std::optional<PastBy> evidence; ///< of being past the limit
    bool offTrend = false;
    std::optional<double> pastNow;
    /// Per race of the plan: probability that it is past the limit once the race is run. Never
    /// falls. Empty: nothing can be said.
    std::vector<double> pastBy;
    /// Index of the race before which to change it: past the limit already, by the rule of record
    /// or with more than the accepted risk, or with more than that once the race is run. Empty: not
    /// before any of them.
    std::optional<std::size_t> changeBefore;

    bool operator==(const PlannedSwap&) const = default;
};

/// Which springs to change before which race, and how many spares that takes.
struct SwapPlan {
    QString engine;
    QDate asOf;
    int racesNow = 0;
    JudgingRules rules;
    PlanQuestion question;
    std::vector<PlannedRaceOutlook> races; ///< by day, kMostPlanned at most
    std::size_t racesLeftOut = 0;          ///< beyond those
    std::vector<PlannedSwap> springs;      ///< by place
    bool hasEstimates = false; ///< false: fewer than two inspections, or no fit; only the rule of
                               ///< record speaks

    bool operator==(const SwapPlan&) const = default;
};

/// `coming`: see comingRaces(). Spares that wear out again before the last race are not counted a
/// second time. Pure; a full fit of the wear model and some 20 ms a race.
[[nodiscard]] SwapPlan swapPlanOf(const EngineHistory& history, const JudgingRules& rules,
                                  const std::vector<PlannedRace>& coming,
                                  const PlanQuestion& question = {});

} // namespace coilbook
