#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/services/round_order.h"
#include "core/units/force.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// One hit taken at a stop of the round, in its present form.
struct RoundHit {
    ReadingId row; ///< the row in force, which a further amendment amends
    int number = 1;
    TypedForce value{0, 0, ForceUnit::PoundForce};
    bool retest = false;
    bool crossedOut = false; ///< a re-test replaces it
    bool corrected = false;
    ReadingId taken; ///< the row that was written first, by which the hits have an order in time

    bool operator==(const RoundHit&) const = default;
};

/// The mean of a spring's hits in one inspection.
struct RoundMean {
    Force mean;
    QDate on;
    int races = 0;

    bool operator==(const RoundMean&) const = default;
};

/// One place of the round and what is known there.
struct RoundStop {
    Place place;
    std::optional<SpringId> spring;    ///< empty: nobody has said yet which spring stands here
    QString label;                     ///< of the spring; without one a free name to begin with
    std::vector<RoundHit> hits;        ///< of this spring in this inspection, by number
    std::optional<RoundMean> baseline; ///< its first inspection, if before this one
    std::optional<RoundMean> previous; ///< its newest inspection before this one
    Force levelAdded;                  ///< to the pressure, by level changes up to `previous`
    bool newLevel = false; ///< a level change since `previous`: the measured loss starts again
    int nextHit = 1;       ///< the number that the next hit gets

    /// Median of the pressures of the other springs of the set: those read in this inspection, or,
    /// while they are fewer than three, the newest earlier ones; empty if those are too few too.
    std::optional<Force> medianOfOthers;

    [[nodiscard]] bool isTested() const { return !hits.empty(); }

    [[nodiscard]] bool hasRetest() const;

    /// Mean of the hits that count; nothing without one.
    [[nodiscard]] std::optional<Force> mean() const;

    bool operator==(const RoundStop&) const = default;
};

/// One inspection in the making: the places in the order in which they are walked, with what stands
/// there and what was read. A value made anew from each log; it decides nothing about the disk.
class Round {
public:
    /// `only`: a quick test of that place, or of all places if empty. Precondition: the log holds
    /// the inspection.
    Round(const EngineLog& log, const InspectionId& inspection, RoundOrder order,
          std::optional<Place> only = {});

    [[nodiscard]] const Inspection& inspection() const { return m_inspection; }

    [[nodiscard]] const std::vector<RoundStop>& stops() const { return m_stops; }

    /// The stop at a place; nothing if the round does not go there.
    [[nodiscard]] std::optional<std::size_t> indexOf(const Place& place) const;

    [[nodiscard]] std::optional<std::size_t> firstUntested() const;

    /// The first one after `index` that has no reading; nothing when none follows.
    [[nodiscard]] std::optional<std::size_t> untestedAfter(std::size_t index) const;

    [[nodiscard]] std::size_t tested() const;

    /// Where the newest hit of the inspection was taken; nothing before the first.
    [[nodiscard]] std::optional<Place> lastRead() const;

    /// The spring of this engine with that label (but for case), wherever it stands.
    [[nodiscard]] std::optional<SpringId> springLabelled(const QString& label) const;

private:
    Inspection m_inspection;
    std::vector<RoundStop> m_stops;
    std::vector<Spring> m_springs;
};

} // namespace coilbook
