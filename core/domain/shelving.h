#pragma once

#include "core/domain/ids.h"
#include "core/units/length.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// Where a spring goes that stands in no place.
enum class Storage {
    Shelf, ///< a spare: may be put in (again)
    Scrap, ///< never to be put in again
};

/// Somebody put a spring on the shelf of an engine, or threw it out: a new spare, or one that came
/// out in a swap. The newest that counts says where an unfitted spring is; one without any that
/// stood in the engine once lies on the shelf.
struct Shelving {
    ShelvingId id;
    EngineId engine;
    SpringId spring;
    Storage to = Storage::Shelf;
    QDate shelvedOn;
    std::optional<TypedForce> pressure; ///< measured off the engine …
    std::optional<Length> height;       ///< … at this height; may be missing
    std::optional<int> racesBefore;     ///< that it ran where this logbook does not see it
    QString reason;
    bool withdrawn = false; ///< kept and counts no longer (undone)

    bool operator==(const Shelving&) const = default;
};

} // namespace coilbook
