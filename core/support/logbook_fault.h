#pragma once

namespace coilbook {

/// Rules of the logbook itself that a change would break. Arguments are listed at the enumerator.
enum class LogbookFault {
    UnknownEngine,         ///< 1: the name asked for, 2…: the names there are
    EngineNameTaken,       ///< 1: the name
    EmptyName,             ///< 1: what needs a name ("engine", "spring", "tester", "person")
    NameTaken,             ///< 1: what has it ("spring", "tester", "person"), 2: the name
    NameDiffersInCaseOnly, ///< 1: the new name, 2: the one there
    BadLimit,              ///< 1: what was given; limit must be above 0
    BadRacesAhead,         ///< 1: what was given; 0 to 60
    BadCaution,            ///< 1: what was given; one of 0.3, 0.5, 0.7
    BadLayout,             ///< 1: what is wrong, e.g. the cylinder named twice
    DateInFuture,          ///< 1: the date; the day after today is the last allowed
    DateTooEarly,          ///< 1: the date; 1950-01-01 is the first allowed
    RacesGoBack,           ///< 1: races given, 2: date of, 3: count of the inspection, running or
                           ///< level change that it crosses
    InspectionExists,      ///< 1: date, 2: races
    ReadingOutOfBounds,    ///< 1: the reading as typed; above 0, at most 1000 lbf or 4448.22 N
    NotAReading,           ///< 1: the text
    SpringElsewhere,       ///< 1: spring, 2: place where it stands in this inspection
    HitExists,             ///< 1: spring, 2: hit number
    NoSuchPlace,           ///< 1: the place
    RaceExists,            ///< 1: race number
    RaceAfterInspection,   ///< 1: race number, 2: its date, 3: date of the inspection counting it
    NothingToAmend,        ///< the amendment changes nothing, or its original is not there
    WhyMissing,            ///< an amendment needs a reason
    UnknownPlaceOfSpring,  ///< 1: spring; it is not fitted anywhere in this engine
    SpringFitted,          ///< 1: spring, 2: place where it stands now
    RunningUnclear,        ///< neither laps nor a part of a race, or both, or out of bounds
    NothingToDecide,       ///< 1: spring, 2: date of the inspection in which it has no reading
    CalibrationTooShort,   ///< 1: different reference forces that its curve needs
    CalibrationNotRising,  ///< it shows no more under the largest force than under the smallest
    CalibrationDueBefore,  ///< 1: due date, 2: date of the calibration
    StudyTooSmall,         ///< fewer than two springs, one person or two hits
    SealNotPassed,         ///< the logbook did not pass through it; 1: the seal as noted
    SwapBeforeReading,     ///< 1: date of the swap, 2: spring now there, 3: date it was read last
    BadLaps,               ///< 1: laps of a planned race; 1 to 1000000
    SpringScrapped,        ///< 1: the spring; it was thrown out
    NotInAnyPlace,         ///< 1: the spring, 2: place where it stands: it cannot lie on the shelf
    BadHeight,             ///< 1: the height at which a spare was measured, mm; 10 to 200
};

} // namespace coilbook
