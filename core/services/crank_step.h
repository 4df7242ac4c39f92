#pragma once

#include "core/services/round.h"

#include <optional>

namespace coilbook {

/// What is done with the crank before the springs of a cylinder are tested (see
/// core/domain/crank.h).
struct CrankStep {
    Cylinder cylinder; ///< to stand at top dead centre of its power stroke
    /// Degrees to turn on from where the newest reading of the round left the crank, 0: it stands
    /// there already; empty: nothing has been read, so nobody knows where it stands.
    std::optional<double> turn;

    bool operator==(const CrankStep&) const = default;
};

[[nodiscard]] CrankStep crankStepTo(std::size_t stop, const Round& round,
                                    const EngineLayout& layout);

} // namespace coilbook
