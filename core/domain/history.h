#pragma once

#include "core/domain/calibration.h"
#include "core/domain/decision.h"
#include "core/domain/engine.h"
#include "core/domain/fitting_spans.h"
#include "core/domain/ids.h"
#include "core/domain/level_change.h"
#include "core/domain/place.h"
#include "core/domain/tester.h"
#include "core/units/force.h"
#include "core/units/temperature.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// What an assessment is made from: the history of one engine up to a day, in present (amended)
/// form, with names and SQL long gone. Pure data; equal histories give equal assessments.

/// A tester as far as the assessment cares.
struct HistoryTester {
    QString name;
    std::optional<TypedForce> range;
    std::optional<TypedForce> graduation;
    TesterId id = {};
    bool corrects = true;
    std::optional<ZeroOffset> zeroOffset = {};
    std::vector<Calibration> calibrations = {}; ///< its own in force

    bool operator==(const HistoryTester&) const = default;
};

struct HistoryInspection {
    InspectionId id;
    QDate on;
    int races = 0;

    bool operator==(const HistoryInspection&) const = default;
};

struct HistoryRace {
    int number = 0;
    QDate on;
    std::optional<int> laps;
    std::optional<int> peakRpm;
    bool overRev = false;

    bool operator==(const HistoryRace&) const = default;
};

/// Running that is no race, see Running.
struct HistoryRunning {
    QDate on;
    int races = 0; ///< of the engine by then
    std::optional<int> laps;
    std::optional<int> raceThousandths;
    QString note;

    bool operator==(const HistoryRunning&) const = default;
};

/// Work on a spring that changed its pressure without wearing it.
struct HistoryLevelChange {
    LevelChangeKind kind = LevelChangeKind::Shim;
    QDate on;
    int races = 0; ///< of the engine by then
    QString note;

    bool operator==(const HistoryLevelChange&) const = default;
};

/// One hit that counts.
struct HistoryHit {
    ReadingId reading; ///< the row in force
    TypedForce value{0, 0, ForceUnit::PoundForce};
    std::optional<std::size_t> tester;           ///< index in EngineHistory::testers
    std::optional<Temperature> temperature = {}; ///< of the engine, as noted

    bool operator==(const HistoryHit&) const = default;
};

/// The hits of one spring in one inspection that count: re-tests replace what they repeat.
struct HistoryCell {
    std::size_t inspection = 0;   ///< index in EngineHistory::inspections
    Place place;                  ///< where the spring stood then
    int exposure = 0;             ///< races run since the baseline while fitted
    std::vector<HistoryHit> hits; ///< never empty, ascending hit number
    ReadingJudgement judgement = ReadingJudgement::LeftToModel; ///< the user's, in force
    bool newLevel = false; ///< the first reading after a level change

    /// Arithmetic mean of all hits, the contract's reading of this inspection.
    [[nodiscard]] Force mean() const;

    bool operator==(const HistoryCell&) const = default;
};

/// One spring in one engine, from its baseline on.
struct HistoryLife {
    SpringId spring;
    QString label;
    std::vector<FittingSpan> spans; ///< in order of time
    std::vector<HistoryCell> cells; ///< in order of inspection; the first is the baseline; may be
                                    ///< empty for a spring that was fitted and not read yet
    std::vector<HistoryLevelChange> levelChanges; ///< in order of time
    bool fitted = false;                          ///< stands in the engine now
    Place place;                                  ///< where it stands, or stood last
    int exposureNow = 0;                  ///< races run since the baseline while fitted, up to now
    std::optional<int> softeningPpm = {}; ///< see Spring

    bool operator==(const HistoryLife&) const = default;
};

struct EngineHistory {
    QString engine;
    QDate asOf;       ///< null when there is nothing and no day was given
    int racesNow = 0; ///< larger of the inspections' counts and race numbers up to that day
    std::vector<HistoryTester> testers;
    std::vector<HistoryInspection> inspections; ///< by date, then races; up to that day
    std::vector<HistoryRace> races;             ///< by number; up to that day
    std::vector<HistoryRunning> running;        ///< by day; up to that day
    bool springsRunIn = false;                  ///< broken in before their baseline
    ExposureUnit exposureUnit = ExposureUnit::Races;
    bool correctsTemperature = false;
    std::vector<HistoryLife> lives; ///< by place where they stand or stood last, then of fitting

    bool operator==(const EngineHistory&) const = default;
};

/// The lives now fitted, by cylinder, I before E (indices into `lives`).
[[nodiscard]] std::vector<std::size_t> fittedLives(const EngineHistory& history);

/// What a spring has lost by its `cell` as measured, the rule of record: baseline minus reading.
/// After a level change it starts again from the first reading, plus what was measured before.
[[nodiscard]] Force measuredLossAt(const HistoryLife& life, std::size_t cell);

/// Races after `from` and up to `to` (engine counts) that the life's spring ran in the engine.
[[nodiscard]] int racesWhileFitted(const std::vector<FittingSpan>& spans, int from, int to);

/// The newest day on which something of this engine is recorded: an inspection, a race, or a
/// fitting, running or level change in force (else what was done since would not show); null
/// without any.
[[nodiscard]] QDate newestDay(const EngineLog& log);

/// The history up to and including `asOf` (newestDay() unless given).
[[nodiscard]] EngineHistory historyOf(const EngineLog& log, std::optional<QDate> asOf = {});

} // namespace coilbook
