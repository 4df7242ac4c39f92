#pragma once

#include "core/domain/engine_log.h"

#include <vector>

namespace coilbook {

/// One hit in its present form, with where it came from. Indices point into the EngineLog.
struct CurrentHit {
    std::size_t inspection = 0; ///< index in log.inspections
    std::size_t sitting = 0;    ///< index in log.sittings
    std::size_t row = 0;        ///< index in log.readings of the row now in force
    std::size_t original = 0;   ///< index in log.readings of the row as first taken
    bool crossedOut = false;    ///< a re-test of the same spring in this inspection replaces it
};

/// The hits in force: every original that is not withdrawn, in the form of its newest amendment
/// (amendments lead back to their original through `amends`), sorted by inspection, place, spring
/// and hit. When an inspection of a spring holds re-test hits, its other hits are crossed out: they
/// stay in the logbook and do not count.
[[nodiscard]] std::vector<CurrentHit> currentHits(const EngineLog& log);

} // namespace coilbook
