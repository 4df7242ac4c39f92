#pragma once

#include "core/domain/engine_log.h"
#include "core/support/result.h"

#include <QStringList>

#include <vector>

namespace coilbook {

// The rules of a logbook that need more than one field to judge: what the store checks before it
// writes and an import before it hands over. Pure functions; each returns the first breach found.

/// DateTooEarly before 1950-01-01 (or no date at all), DateInFuture after the day after `today`.
[[nodiscard]] Result<void> checkDay(const QDate& day, const QDate& today);

/// The engine's own facts: EmptyName, BadLayout, BadLimit, BadRacesAhead.
[[nodiscard]] Result<void> checkEngine(const Engine& engine);

/// `name` of what (`engine`, `spring`, `tester`): EmptyName.
[[nodiscard]] Result<void> checkName(const QString& name, const QString& what);

/// `name` of what beside the names of the `others` of its kind: EngineNameTaken or NameTaken,
/// NameDiffersInCaseOnly.
[[nodiscard]] Result<void> checkNameIsFree(const QString& name, const QString& what,
                                           const QStringList& others);

/// Inspections and races of one engine beside each other, in any order: InspectionExists,
/// RacesGoBack (races never fall over the dates), RaceExists, RaceAfterInspection (race n is not
/// dated after an inspection that counts n or more). The fault calls the later of two inspections
/// the given one unless the earlier is `given`.
[[nodiscard]] Result<void> checkTimeline(const std::vector<Inspection>& inspections,
                                         const std::vector<Race>& races,
                                         const InspectionId& given = {});

/// Whether two moments of an engine may stand in one logbook: none of a later day counts fewer
/// races.
[[nodiscard]] bool isInOrder(const QDate& oneDay, int oneRaces, const QDate& otherDay,
                             int otherRaces);

/// Running and level changes of one engine beside its inspections, in any order: RacesGoBack. What
/// is withdrawn is not looked at.
[[nodiscard]] Result<void> checkMoments(const EngineLog& log);

/// The facts of running by themselves: RunningUnclear unless it says either laps or a part of a
/// race, within bounds.
[[nodiscard]] Result<void> checkRunning(const Running& running);

/// UnknownPlaceOfSpring unless the engine knows the spring (one of `springs`).
[[nodiscard]] Result<void> checkLevelChange(const LevelChange& change,
                                            const std::vector<Spring>& springs);

/// DateTooEarly before 1950-01-01 (or no date at all), BadLaps.
[[nodiscard]] Result<void> checkPlannedRace(const PlannedRace& race);

/// The facts of a shelving by themselves: ReadingOutOfBounds, BadHeight.
[[nodiscard]] Result<void> checkShelving(const Shelving& shelving);

/// NothingToDecide unless the spring of the decision has a hit in its inspection; `log` holds at
/// least that inspection with its readings.
[[nodiscard]] Result<void> checkDecision(const Decision& decision, const EngineLog& log);

/// The springs of one engine beside each other: EmptyName, NameTaken, NameDiffersInCaseOnly.
[[nodiscard]] Result<void> checkSprings(const std::vector<Spring>& springs);

/// One row by itself: ReadingOutOfBounds, NoSuchPlace, and NothingToAmend for an amendment that
/// names no original (or an original that names one).
[[nodiscard]] Result<void> checkReading(const Reading& reading, const EngineLayout& layout);

/// The hits of a log in their present form (all of them, or those of the inspections that matter):
/// SpringElsewhere (a spring stands at one place in an inspection), HitExists (a hit number counts
/// once for a spring in an inspection).
[[nodiscard]] Result<void> checkHits(const EngineLog& log);

} // namespace coilbook
