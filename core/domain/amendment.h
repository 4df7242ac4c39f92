#pragma once

#include "core/domain/ids.h"
#include "core/domain/inspection.h"

#include <QString>
#include <QUuid>

namespace coilbook {

/// What kind of record a fact belongs to. Readings and decisions are not here: they
/// are amended by further rows.
enum class Subject {
    Engine,
    Race,
    Inspection,
    Sitting,
    Spring,
    Tester,
    Fitting,
    Running,
    LevelChange,
    Calibration,
    Study,
    PlannedRace,
    Shelving
};

/// One fact that was changed: the old value stays here for good. Values are the stored text of the
/// column (`fact` is its name, e.g. `raced_on`); an empty text stands for "not given".
struct Amendment {
    AmendmentId id;
    Subject subject = Subject::Engine;
    QUuid record; ///< id of the amended record
    QString fact;
    QString oldValue;
    QString newValue;
    Authorship author;

    bool operator==(const Amendment&) const = default;
};

} // namespace coilbook
