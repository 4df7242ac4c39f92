#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/odds_ahead.h"
#include "core/domain/history.h"
#include "core/wear/fit.h"
#include "core/wear/outputs.h"
#include "core/wear/season_builder.h"

#include <optional>
#include <vector>

namespace coilbook {

/// What the wear model has to say of one engine, in quantities: the way from the numbers of
/// `core/wear` to an assessment. Made by one full fit.
class WearEstimate {
public:
    /// Empty with fewer than two inspections that hold readings, and where no fit exists.
    [[nodiscard]] static std::optional<WearEstimate> of(const EngineHistory& history,
                                                        Curves curves);

    /// The estimate of another history of the same engine, one with a reading more, say, at this
    /// one's mode, axes and events: the fast path (section 10). Without curves and without the
    /// check of the newest inspection. Empty where no fit exists.
    [[nodiscard]] std::optional<WearEstimate> refitted(const EngineHistory& history) const;

    /// The band of one hit of `tester` (an index of the history; empty: none noted) on a fitted
    /// life in the newest inspection, read or not: median and equal-tailed 90 % interval of what it
    /// will read. Empty for a life that was never read, was taken out, or stands at a level that
    /// has not been read yet, and where the engine has run since that inspection.
    [[nodiscard]] std::optional<ForceEstimate> nextReading(std::size_t life,
                                                           std::optional<std::size_t> tester) const;

    /// z of the session check of the newest inspection; empty on the fast path.
    [[nodiscard]] std::optional<double> newestScore() const { return m_newestScore; }

    /// What all readings of an inspection share, and whether that is worth a flag. `inspection` is
    /// an index of the history; one without readings has no shift.
    [[nodiscard]] std::optional<ForceEstimate> shift(std::size_t inspection) const;
    [[nodiscard]] bool isShifted(std::size_t inspection) const;

    /// What an over-revved race has cost every spring that stood in the engine.
    struct OverRevCost {
        int race = 0;
        ForceEstimate loss;
    };

    /// Figures of one life that stands in the engine; `trend` and `projection` only if asked for.
    struct LifeFigures {
        ForceEstimate loss;
        ForceEstimate lossPerRace;
        OddsAhead odds{};
        double exposure = 0.0;         ///< mean races, running that is no race among them
        double running = 0.0;          ///< that part of it
        int racesWithoutLaps = 0;      ///< of the engine; they keep its wear from going by laps
        bool leavesRunningOut = false; ///< of the engine: no race tells what its laps are worth
        std::optional<double> offTrendScore; ///< z with the sign of loss; alarm from 3
        std::optional<Force> fittedBaseline; ///< likewise
        std::vector<Force> levelSteps;       ///< likewise: what its level changes added, in order
        std::vector<EventFinding> events;
        std::vector<Force> eventSizes; ///< likewise: size of the misread or drop, with its sign
        std::vector<ReadingId> hitsSetAside;
        std::vector<OverRevCost> overRevs; ///< of the races that the spring ran, by race
        std::vector<TrendPoint> trend;
        std::vector<TrendPoint> projection;
    };

    /// Empty for a life of the history that was never read or was taken out.
    [[nodiscard]] std::optional<LifeFigures> figures(std::size_t life,
                                                     const JudgingRules& rules) const;

    /// What a race to come of so many laps is worth in mean races; empty: one, since laps do not
    /// count or are not known.
    [[nodiscard]] std::optional<double> worthOfLaps(const std::optional<int>& laps) const;

    /// Springs `races` > 0 mean races from now, taken together.
    struct SetAhead {
        std::vector<std::optional<double>> odds;  ///< of having lost the limit, per spring
        std::vector<std::optional<Force>> losses; ///< mean
        std::vector<double> count; ///< probability that 0, 1, 2 … of them have lost the limit
    };

    /// Lives of the history that stand in the engine; those never read have no figures and do not
    /// count.
    [[nodiscard]] SetAhead setAhead(const std::vector<std::size_t>& lives, double races,
                                    Force limit) const;

    /// New springs put in now, as this engine's other springs suggest.
    [[nodiscard]] SetAhead newSetAhead(const std::vector<Valve>& valves, double races,
                                       Force limit) const;

    /// Mean loss at each cell of a life of the history, also of one that was taken out; empty for
    /// one that was never read.
    [[nodiscard]] std::vector<Force> lossesOf(std::size_t life) const;

private:
    enum class SessionCheck { Made, LeftOut };

    WearEstimate(const EngineHistory& history, wear::SeasonOfHistory season, wear::Fit fit,
                 Curves curves, SessionCheck check);

    [[nodiscard]] std::optional<std::size_t> positionOf(std::size_t life) const;
    [[nodiscard]] std::optional<std::size_t> sessionOf(std::size_t inspection) const;
    [[nodiscard]] std::vector<wear::Event> eventsIn(const EngineHistory& history,
                                                    const wear::SeasonOfHistory& season) const;
    void addEvents(LifeFigures& figures, std::size_t life) const;
    void addCurve(LifeFigures& figures, std::size_t position, int racesAhead) const;

    const EngineHistory* m_history;
    wear::SeasonOfHistory m_season;
    wear::Fit m_fit;
    std::vector<std::size_t> m_fitted;                ///< lives of the season that stand in it
    std::vector<wear::LifePosterior> m_posteriors;    ///< of these
    std::vector<std::vector<wear::Mixture>> m_curves; ///< of these, per cell; empty: not asked for
    std::vector<double> m_starts;                     ///< of these; empty: not asked for
    std::optional<double> m_newestScore;              ///< session check
};

} // namespace coilbook
