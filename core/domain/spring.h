#pragma once

#include "core/domain/ids.h"
#include "core/domain/place.h"

#include <QDate>
#include <QString>

#include <optional>

namespace coilbook {

/// A physical spring. Its label is unique among the springs that have stood in one engine.
struct Spring {
    SpringId id;
    QString label;
    QString part; ///< part name or number as the shop writes it
    QString batch;
    QString note;
    /// How much of its force it loses per °C, in millionths; empty: as spring steel does.
    std::optional<int> softeningPpm = {};

    bool operator==(const Spring&) const = default;
};

/// Somebody put a spring in a place (set-up of an engine, a swap): from then on it stands there
/// until another one does, or until it is put elsewhere. Readings imply fittings too; see
/// fittingSpans(). A withdrawn fitting is kept and no longer counts (an undone swap).
struct Fitting {
    FittingId id;
    EngineId engine;
    SpringId spring;
    Place place;
    QDate fittedOn;
    int engineRaces = 0; ///< races that the engine had run by then
    QString reason;
    bool withdrawn = false;

    bool operator==(const Fitting&) const = default;
};

} // namespace coilbook
