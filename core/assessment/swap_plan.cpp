#include "core/assessment/swap_plan.h"

#include "core/assessment/spring_assessment.h"
#include "core/assessment/wear_estimate.h"
#include "core/statistics/poisson_binomial.h"

#include <algorithm>

namespace coilbook {

namespace {

class PlanMaker {
public:
    PlanMaker(const EngineHistory& history, const JudgingRules& rules, const PlanQuestion& question)
        : m_history(history)
        , m_wear(WearEstimate::of(history, Curves::None))
        , m_lives(fittedLives(history)) {
        m_plan.engine = history.engine;
        m_plan.asOf = history.asOf;
        m_plan.racesNow = history.racesNow;
        m_plan.rules = rules;
        m_plan.question = question;
        m_plan.hasEstimates = m_wear.has_value();
    }

    SwapPlan make(const std::vector<PlannedRace>& coming) {
        addSprings();
        const std::size_t looked = std::min(coming.size(), kMostPlanned);
        m_plan.racesLeftOut = coming.size() - looked;
        double ahead = 0.0;
        for (std::size_t r = 0; r < looked; ++r) {
            PlannedRaceOutlook outlook;
            outlook.race = coming[r];
            const std::optional<double> worth =
                m_wear ? m_wear->worthOfLaps(coming[r].laps) : std::nullopt;
            outlook.lapsCount = worth.has_value();
            ahead += worth.value_or(1.0);
            outlook.racesAhead = ahead;
            if (m_wear) {
                lookAhead(outlook);
            }
            m_plan.races.push_back(std::move(outlook));
        }
        for (PlannedSwap& spring : m_plan.springs) {
            decide(spring);
        }
        return std::move(m_plan);
    }

private:
    void addSprings() {
        const Assessment assessment = assessInspections(m_history, m_wear, m_plan.rules);
        for (const std::size_t life : m_lives) {
            const SpringAssessment spring = assessSpring(life, m_history, m_wear, assessment);
            PlannedSwap swap;
            swap.id = spring.id;
            swap.label = spring.label;
            swap.place = spring.place;
            swap.standing = spring.standing;
            swap.evidence = spring.pastBy;
            swap.offTrend = spring.offTrend;
            swap.pastNow = spring.pPastLimit;
            m_plan.springs.push_back(std::move(swap));
        }
    }

    void lookAhead(PlannedRaceOutlook& outlook) {
        const int places = static_cast<int>(m_lives.size());
        const Force limit = m_plan.rules.limit;
        const WearEstimate::SetAhead asItStands =
            m_wear->setAhead(m_lives, outlook.racesAhead, limit);
        for (std::size_t s = 0; s < m_lives.size(); ++s) {
            PlannedSwap& spring = m_plan.springs[s];
            if (asItStands.odds[s]) {
                const double before =
                    spring.pastBy.empty() ? spring.pastNow.value_or(0.0) : spring.pastBy.back();
                spring.pastBy.push_back(std::max(before, *asItStands.odds[s]));
            }
        }
        outlook.due = asItStands.count;
        outlook.expectedDue = statistics::meanOf(outlook.due);
        outlook.enough = enough(outlook.due, places);
        std::vector<Valve> valves;
        for (const PlannedSwap& spring : m_plan.springs) {
            valves.push_back(spring.place.valve);
        }
        const WearEstimate::SetAhead renewed =
            m_wear->newSetAhead(valves, outlook.racesAhead, limit);
        outlook.expectedDueNew = statistics::meanOf(renewed.count);
        outlook.enoughNew = enough(renewed.count, places);
        for (std::size_t s = 0; s < valves.size(); ++s) {
            (valves[s] == Valve::Intake ? outlook.lossNewIntake : outlook.lossNewExhaust) =
                renewed.losses[s];
        }
    }

    [[nodiscard]] int enough(const std::vector<double>& counts, int places) const {
        const auto found = statistics::enoughFor(counts, m_plan.question.certainty);
        return found ? static_cast<int>(*found) : places;
    }

    void decide(PlannedSwap& spring) const {
        if (m_plan.races.empty()) {
            return;
        }
        if (spring.standing == Standing::PastLimit ||
            spring.pastNow.value_or(0.0) > m_plan.question.risk) {
            spring.changeBefore = 0;
            return;
        }
        for (std::size_t r = 0; r < spring.pastBy.size(); ++r) {
            if (spring.pastBy[r] > m_plan.question.risk) {
                spring.changeBefore = r;
                return;
            }
        }
    }

    const EngineHistory& m_history;
    std::optional<WearEstimate> m_wear;
    std::vector<std::size_t> m_lives;
    SwapPlan m_plan;
};

} // namespace

SwapPlan swapPlanOf(const EngineHistory& history, const JudgingRules& rules,
                    const std::vector<PlannedRace>& coming, const PlanQuestion& question) {
    return PlanMaker(history, rules, question).make(coming);
}

} // namespace coilbook
