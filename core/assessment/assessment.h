#pragma once

#include "core/domain/engine.h"
#include "core/domain/history.h"
#include "core/units/force.h"

#include <QDate>
#include <QString>

#include <array>
#include <optional>
#include <vector>

namespace coilbook {

/// The standing of a spring; the first that holds counts.
enum class Standing { PastLimit, Due, NoTrend, Sound };

/// Which evidence says that a spring is past the limit.
enum class PastBy { Measured, Estimate, Both };

/// An estimate: posterior or fitted mean and the bounds of the equal-tailed 90 % interval.
struct ForceEstimate {
    Force mean;
    Force low90;
    Force high90;

    bool operator==(const ForceEstimate&) const = default;
};

/// The smallest whole number of races, 0 to 60, by which the limit is reached with probability
/// 0.1, 0.5 and 0.9; empty: not within 60 races.
struct RacesLeft {
    std::optional<int> p10;
    std::optional<int> median;
    std::optional<int> p90;

    bool operator==(const RacesLeft&) const = default;
};

/// Why a standing or a flag is what it is, as data; `core/wording` makes the sentence.
enum class ReasonKind {
    NeverRead,         ///< fitted, and not read yet
    BaselineOnly,      ///< one inspection: no loss yet
    FittedNew,         ///< just fitted to an engine with a history
    LossAndRate,       ///< forces: loss, rate; counts: races, thousandths of other running (if any)
    ReachesLimit,      ///< forces: limit; counts: p10, median, p90 (absent: more than 60)
    NotWithinHorizon,  ///< forces: limit; it is not reached within 60 races
    PastByMeasurement, ///< forces: measured loss, limit
    PastByEstimate,    ///< forces: estimated loss, limit
    TestAgainBeforeSwapping, ///< past by measurement alone
    DueWithin,               ///< forces: limit; counts: races ahead
    OffTrend,                ///< forces: newest reading
    InspectionShifted,       ///< forces: shift of the newest inspection; counts: races then
    EarlierShifted,          ///< forces: shift; counts: races at that inspection
    OverRev,                 ///< counts: race number, readings of the spring since; forces, where
                             ///< there is an estimate: its cost, low and high bound
    OverRevCost,             ///< an earlier one; likewise
    Provisional,             ///< two or three inspections: mostly what such springs usually do
    MisreadSetAside,         ///< forces: reading, by how much off; counts: races at its inspection
    HitsSetAside,            ///< counts: how many hits lie too far from the others
    SuddenDrop,              ///< forces: drop; counts: races at its inspection
    PendingDrop,             ///< forces: how far below; counts: percent that it is a drop
    SetAsideByUser,          ///< forces: reading; counts: races at its inspection
    DropDenied,              ///< the user's say after a re-test; likewise
    DropConfirmed,           ///< the user's say; forces: drop; counts: races at its inspection
    ReadingKept,             ///< the user's say; forces: reading; counts: races at its inspection
    MeasuredAnew,            ///< forces: loss measured before; counts: races, LevelChangeKind
    LapsMissing,             ///< the wear should go by laps; counts: races without laps
    RunningLeftOut,          ///< noted in laps, and no race tells what laps are worth
    FitFailed,               ///< no fit: the raw rule stands alone; forces: measured loss
};

struct Reason {
    ReasonKind kind = ReasonKind::BaselineOnly;
    std::vector<Force> forces; ///< in the order given at the enumerator
    std::vector<std::optional<int>> counts;

    bool operator==(const Reason&) const = default;
};

/// A point of the estimated loss, for charts.
struct TrendPoint {
    double exposure = 0.0; ///< races since the baseline while fitted
    Force mean;
    Force low90;
    Force high90;

    bool operator==(const TrendPoint&) const = default;
};

/// A reading, or a step of the pressure, that the trend does not go through.
struct EventFinding {
    enum class Kind {
        Misread,     ///< the tester, not the spring: left out of the estimate
        Drop,        ///< a sudden loss, part of the estimate
        PendingDrop, ///< newest reading, low: one or the other, told by a re-test
    };
    Kind kind = Kind::Misread;
    std::size_t inspection = 0;   ///< index in Assessment::inspections
    double dropProbability = 0.0; ///< 0 for a misread, 1 for a drop
    bool byUser = false;          ///< decided by the user, not found by the model

    bool operator==(const EventFinding&) const = default;
};

struct SpringAssessment {
    SpringId id;
    QString label;
    Place place;
    int inspections = 0;   ///< in which this spring was read
    int exposure = 0;      ///< races run since its baseline while fitted
    QDate latestOn;        ///< null: never read
    int racesAtLatest = 0; ///< exposure at its newest inspection
    std::optional<Force> baseline;
    std::optional<Force> latest;
    std::optional<Force> measuredLoss; ///< baseline minus latest: the rule of record
    std::optional<ForceEstimate> loss;
    std::optional<ForceEstimate> lossPerRace;
    std::optional<double> pPastLimit;
    std::optional<double> pDue;
    std::optional<RacesLeft> racesLeft; ///< empty: nothing can be said
    Standing standing = Standing::NoTrend;
    std::optional<PastBy> pastBy;
    bool offTrend = false;
    bool provisional = false;            ///< an estimate from two or three inspections
    std::optional<Force> fittedBaseline; ///< what the estimate counts from; with the curves only
    std::vector<Force> levelSteps;       ///< likewise: what its level changes added, in order
    std::vector<EventFinding> events;
    std::vector<ReadingId> hitsSetAside; ///< hits that lie too far from the others of their cell
    std::vector<Reason> reasons;
    std::vector<TrendPoint> trend;      ///< fitted loss from the baseline to now; may be empty
    std::vector<TrendPoint> projection; ///< from now to `racesAhead` races on; may be empty

    bool operator==(const SpringAssessment&) const = default;
};

struct InspectionAssessment {
    InspectionId id;
    QDate on;
    int races = 0;
    std::optional<ForceEstimate> shift; ///< what all its readings share; empty until told
    bool shifted = false;

    bool operator==(const InspectionAssessment&) const = default;
};

struct Assessment {
    QString engine;
    QDate asOf; ///< null: no data and no day given
    int racesNow = 0;
    JudgingRules rules;
    std::vector<InspectionAssessment> inspections;
    std::vector<SpringAssessment> springs; ///< now fitted, by cylinder, I before E

    bool operator==(const Assessment&) const = default;
};

/// Whether an assessment holds the points of its trends and projections, which cost as much as the
/// rest: a chart needs them, a table does not.
enum class Curves { None, Drawn };

/// History in, assessment out: pure, without I/O, the same for equal input. Never throws; where no
/// fit is possible the raw rule stands alone and a reason says so.
[[nodiscard]] Assessment assess(const EngineHistory& history, const JudgingRules& rules,
                                Curves curves = Curves::Drawn);

} // namespace coilbook
