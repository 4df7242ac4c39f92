#pragma once

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

#include <optional>
#include <variant>
#include <vector>

namespace coilbook {

/// The things a user does to a logbook. Each is applied in one transaction, wholly or not at all,
/// and may be repeated after any doubt: records carry ids that the program made beforehand, and a
/// row that is there already is left alone. Records that carry a known id amend the facts of that
/// record; who, when and why go with it and the old values are kept.

struct AddEngine {
    Engine engine;
    std::vector<Spring> springs;   ///< the set it starts with, may be empty
    std::vector<Fitting> fittings; ///< where those springs stand
};

struct AmendEngine {
    Engine engine; ///< as it shall be; includes renaming, retiring and the judging rules
    Authorship author;
};

struct AddRace {
    Race race;
};

struct AmendRace {
    Race race;
    Authorship author;
};

struct StartInspection {
    Inspection inspection;
    Sitting sitting;
};

/// Another tester, person or temperature from here on.
struct StartSitting {
    Sitting sitting;
};

/// Date, count of races, or open/closed. Opening and closing alone leaves no amendment.
struct AmendInspection {
    Inspection inspection;
    Authorship author;
};

struct AmendSitting {
    Sitting sitting;
    Authorship author;
};

/// Readings as taken, one or several at once. Springs not stored yet are stored with them.
struct RecordReadings {
    std::vector<Reading> readings;
    std::vector<Spring> newSprings;
};

/// A correction or a withdrawal: `reading.kind` and `reading.amends` say of what.
struct AmendReading {
    Reading reading;
};

/// A swap: the new spring stands at the place from here on. With a baseline taken at once, its
/// inspection (if new), sitting and readings go into the same transaction, and so does where the
/// spring that comes out is put.
struct FitSpring {
    Fitting fitting;
    std::optional<Spring> newSpring;
    std::optional<Shelving> outgoing;
    std::optional<Inspection> newInspection;
    std::optional<Sitting> newSitting;
    std::vector<Reading> baseline;
};

/// Takes back a fitting (undo of a swap); `withdrawn` false puts it in force again (redo).
struct WithdrawFitting {
    FittingId fitting;
    bool withdrawn = true;
    Authorship author;
};

struct AmendSpring {
    Spring spring;
    Authorship author;
};

/// The user's say about a spring's readings in one inspection; `LeftToModel` takes it back.
struct DecideReading {
    Decision decision;
};

struct AddRunning {
    Running running;
};

/// Also withdraws it, or puts it in force again.
struct AmendRunning {
    Running running;
    Authorship author;
};

struct AddLevelChange {
    LevelChange change;
};

/// Also withdraws it, or puts it in force again.
struct AmendLevelChange {
    LevelChange change;
    Authorship author;
};

struct AddPlannedRace {
    PlannedRace race;
};

/// Also strikes it from the calendar, or puts it back.
struct AmendPlannedRace {
    PlannedRace race;
    Authorship author;
};

/// Puts a spring that stands in no place on the shelf or throws it out; a spare that the logbook
/// does not know yet is stored with it.
struct ShelveSpring {
    Shelving shelving;
    std::optional<Spring> newSpring;
};

/// Also withdraws it, or puts it in force again.
struct AmendShelving {
    Shelving shelving;
    Authorship author;
};

struct AddTester {
    Tester tester;
};

struct AmendTester {
    Tester tester;
    Authorship author;
};

struct AddCalibration {
    Calibration calibration;
};

/// Also withdraws it, or puts it in force again.
struct AmendCalibration {
    Calibration calibration;
    Authorship author;
};

struct AddStudy {
    RepeatabilityStudy study;
};

/// Also withdraws it, or puts it in force again.
struct AmendStudy {
    RepeatabilityStudy study;
    Authorship author;
};

using Change =
    std::variant<AddEngine, AmendEngine, AddRace, AmendRace, StartInspection, StartSitting,
                 AmendInspection, AmendSitting, RecordReadings, AmendReading, FitSpring,
                 WithdrawFitting, AmendSpring, DecideReading, AddRunning, AmendRunning,
                 AddLevelChange, AmendLevelChange, AddPlannedRace, AmendPlannedRace, ShelveSpring,
                 AmendShelving, AddTester, AmendTester, AddCalibration, AmendCalibration, AddStudy,
                 AmendStudy>;

/// What is being typed at the bench and not committed yet. It is kept in the logbook, so that the
/// form comes back whole after a crash.
struct Draft {
    EngineId engine;
    InspectionId inspection;
    Place place;
    QString typed;

    bool operator==(const Draft&) const = default;
};

} // namespace coilbook
