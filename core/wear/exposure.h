#pragma once

#include "core/domain/history.h"

#include <optional>
#include <vector>

namespace coilbook::wear {

/// A day and the races that the engine had run by then.
struct RaceCount {
    QDate on;
    int races = 0;
};

/// Exposure in mean races (section 1): races count one each, or by their laps where the engine's
/// wear goes by laps and every race since the first inspection has them; running that is no race
/// counts as the part of a race that it is worth. Running of a day was before that day's
/// inspection.
class Exposure {
public:
    /// `firstRaces`: races that the engine had run at its first inspection.
    Exposure(const EngineHistory& history, int firstRaces);

    /// Run by the engine after one moment and up to another.
    [[nodiscard]] double between(const RaceCount& from, const RaceCount& to) const;

    /// The part of it that was run while one of the spans lasted.
    [[nodiscard]] double whileFitted(const std::vector<FittingSpan>& spans, const RaceCount& from,
                                     const RaceCount& to) const;

    /// The part of that which was no race.
    [[nodiscard]] double runningWhileFitted(const std::vector<FittingSpan>& spans,
                                            const RaceCount& from, const RaceCount& to) const;

    /// What a race to come of so many laps is worth; empty where laps do not count or are not
    /// known: then it is worth one.
    [[nodiscard]] std::optional<double> worthOf(const std::optional<int>& laps) const;

    /// Races that have no laps, though the wear should go by laps.
    [[nodiscard]] int racesWithoutLaps() const { return m_racesWithoutLaps; }

    /// Whether running was noted in laps that no race of the engine gives a measure for.
    [[nodiscard]] bool leavesRunningOut() const { return m_leavesRunningOut; }

private:
    struct Ran {
        QDate on;
        double worth = 0.0; ///< mean races
    };

    void weighRaces(const EngineHistory& history);
    void weighRunning(const EngineHistory& history);
    [[nodiscard]] double racesBetween(int from, int to) const;
    [[nodiscard]] double runningBetween(const QDate& from, const QDate& to) const;

    int m_firstRaces;
    std::optional<double> m_meanLaps;
    bool m_goesByLaps = false;
    std::vector<double> m_races; ///< worth of the races after the first inspection; empty: one each
    std::vector<Ran> m_running;
    int m_racesWithoutLaps = 0;
    bool m_leavesRunningOut = false;
};

} // namespace coilbook::wear
