#pragma once

#include "core/domain/engine_log.h"
#include "core/domain/history.h"

#include <vector>

namespace coilbook {

/// A spring that stands in no place, as the shelf shows it.
struct ShelvedSpring {
    Spring spring;
    Storage where = Storage::Shelf;
    QDate since;                        ///< day of its newest shelving; null: none noted
    std::optional<TypedForce> pressure; ///< as measured then …
    std::optional<Length> height;       ///< … at this height
    std::optional<Force> lastInEngine;  ///< its newest reading in this engine
    QDate lastReadOn;                   ///< null: never read here
    int races = 0;                      ///< already run, here and before
    QString reason;                     ///< why it lies there

    bool operator==(const ShelvedSpring&) const = default;
};

/// The springs of an engine that stand in no place, by label: those that came out, and spares that
/// never stood anywhere. `history` is that of the log.
[[nodiscard]] std::vector<ShelvedSpring> shelfOf(const EngineLog& log,
                                                 const EngineHistory& history);

/// What was last said of a spring's whereabouts outside the engine: the newest by day, then by
/// arrival, of those in force; null without any.
[[nodiscard]] const Shelving* shelvingInForce(const EngineLog& log, const SpringId& spring);

} // namespace coilbook
