#pragma once

#include "core/domain/amendment.h"
#include "core/domain/calibration.h"
#include "core/domain/decision.h"
#include "core/domain/engine.h"
#include "core/domain/inspection.h"
#include "core/domain/level_change.h"
#include "core/domain/planned_race.h"
#include "core/domain/race.h"
#include "core/domain/repeatability_study.h"
#include "core/domain/running.h"
#include "core/domain/shelving.h"
#include "core/domain/spring.h"
#include "core/domain/tester.h"

#include <vector>

namespace coilbook {

/// Everything the logbook knows of one engine, as one immutable value: what the store loads, the
/// services hand to the window, and the assessment is made from.
/// Orders: races by number; inspections by date, then races; sittings and readings in order of
/// arrival (id); fittings likewise.
struct EngineLog {
    Engine engine;
    std::vector<Race> races;
    std::vector<Inspection> inspections;
    std::vector<Sitting> sittings;
    std::vector<Reading> readings; ///< originals and amendments, all that were ever written
    std::vector<Spring> springs;   ///< those that have a reading or a fitting in this engine,
                                   ///< or lay on its shelf
    std::vector<Fitting> fittings; ///< explicit ones, withdrawn ones included
    std::vector<Running> running;  ///< by day, then count; withdrawn ones included
    std::vector<LevelChange> levelChanges;   ///< likewise
    std::vector<PlannedRace> plannedRaces;   ///< by day; withdrawn ones included
    std::vector<Shelving> shelvings;         ///< in order of arrival; withdrawn ones included
    std::vector<Decision> decisions;         ///< all that were ever made, in order of arrival
    std::vector<Tester> testers;             ///< all of the logbook
    std::vector<Calibration> calibrations;   ///< of all testers, by day; withdrawn ones included
    std::vector<RepeatabilityStudy> studies; ///< likewise
    std::vector<Amendment> amendments;       ///< of this engine and of all records above

    bool operator==(const EngineLog&) const = default;
};

/// One line of the engine list.
struct EngineSummary {
    EngineId id;
    QString name;
    QString serial;
    bool retired = false;
    int inspections = 0;
    QDate newestDay; ///< newest inspection or race; null without either

    bool operator==(const EngineSummary&) const = default;
};

} // namespace coilbook
