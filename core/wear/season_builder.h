#pragma once

#include "core/domain/history.h"
#include "core/wear/hit_noise.h"
#include "core/wear/hit_screen.h"
#include "core/wear/season.h"

#include <vector>

namespace coilbook::wear {

/// A season with the ways back to the history it was made from.
struct SeasonOfHistory {
    Season season;
    std::vector<std::size_t> lives;    ///< index in EngineHistory::lives of each life
    std::vector<std::size_t> sessions; ///< index in EngineHistory::inspections of each session
    std::vector<HitNoise> testers;     ///< per tester group; the last is "no tester noted"
    std::vector<ReadingId> screened;   ///< hits that the hit screen left out
    std::vector<double> runningNow;    ///< per life: the part of its exposure that was no race
    std::vector<int> overRevRaces;     ///< race number of each over-rev column
    int racesWithoutLaps = 0;          ///< that keep the wear from going by laps, as it should
    bool leavesRunningOut = false;     ///< running in laps, and no race tells what laps are worth
};

/// Arranges a history for the model (section 1). Lives without a reading and inspections without
/// one have no part in it.
[[nodiscard]] SeasonOfHistory seasonOf(const EngineHistory& history);

} // namespace coilbook::wear
