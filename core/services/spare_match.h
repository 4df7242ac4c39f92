#pragma once

#include "core/domain/shelf.h"

#include <optional>
#include <vector>

namespace coilbook {

/// A spare that might go into a place.
struct SpareProposal {
    ShelvedSpring spare;
    bool samePart = false;      ///< as the springs of the set are of
    std::optional<Force> apart; ///< how far it lies from the set; empty: never measured

    bool operator==(const SpareProposal&) const = default;
};

/// What a spring at `place` should read when it is put in: the median of the baselines of the
/// springs that stand at the same kind of valve, of all springs where none of those was read. Empty
/// without any.
[[nodiscard]] std::optional<Force> setPressure(const EngineHistory& history, const Place& place);

/// The spares on the shelf of an engine, those that match its set best first: of the set's part
/// before others, then by how near their pressure lies to setPressure(), those never measured last.
/// A pressure measured on the bench counts before one read in the engine. The heights at which
/// they were measured are not allowed for: they are shown beside. Common practice, no source.
[[nodiscard]] std::vector<SpareProposal>
proposedSpares(const EngineLog& log, const EngineHistory& history, const Place& place);

} // namespace coilbook
