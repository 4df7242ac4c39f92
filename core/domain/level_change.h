#pragma once

#include "core/domain/inspection.h"

#include <QDate>
#include <QString>

#include <vector>

namespace coilbook {

enum class LevelChangeKind { Shim, ValveSeatWork, Retainer, Move, Other };

/// Work that changed the seat pressure of a spring without wearing it: from the first inspection
/// after it on, the spring reads higher or lower, and that is no loss.
struct LevelChange {
    LevelChangeId id;
    EngineId engine;
    SpringId spring;
    LevelChangeKind kind = LevelChangeKind::Shim;
    QDate changedOn;
    int engineRaces = 0; ///< races that the engine had run by then
    QString note;
    bool withdrawn = false; ///< kept and counts no longer (undone)

    bool operator==(const LevelChange&) const = default;
};

/// Whether a level change of the spring (none that is withdrawn) lies between two inspections that
/// follow each other, so that the later one is the first after it: on a later day than the change,
/// or on its day with more races.
[[nodiscard]] bool isLevelChanged(const std::vector<LevelChange>& changes, const SpringId& spring,
                                  const Inspection& earlier, const Inspection& later);

} // namespace coilbook
