#pragma once

#include "core/domain/place.h"
#include "core/support/result.h"

#include <QString>

#include <vector>

namespace coilbook {

/// One row of cylinders, seen from above with the engine's front at the top.
struct Bank {
    QString name;              ///< "Left", "Right", or what the shop says
    std::vector<Place> places; ///< its springs from front to rear

    bool operator==(const Bank&) const = default;
};

/// How an engine is built, as data: which cylinder sits where, where the intake and exhaust spring
/// of each sit along the bank, and in which order the cylinders fire. Everything that draws or
/// walks an engine goes by this.
struct EngineLayout {
    std::vector<Bank> banks;           ///< left to right as seen from above, front at the top
    std::vector<Cylinder> firingOrder; ///< each cylinder once, beginning with any

    /// Tenths of a degree of crank from each firing to the next, the last one back to the first;
    /// they make up two turns. Empty: an even-fire engine, see crank.h.
    std::vector<int> firingIntervals;

    /// The user's own order of a round, each place once; empty: none.
    std::vector<Place> ownRound;

    /// Number of cylinders.
    [[nodiscard]] int cylinders() const { return static_cast<int>(firingOrder.size()); }

    /// All places, by cylinder, I before E.
    [[nodiscard]] std::vector<Place> places() const;

    [[nodiscard]] bool has(const Place& place) const;

    bool operator==(const EngineLayout&) const = default;
};

/// Eight cylinders, two valves each: odd numbers on the left bank and even on the right, counted
/// from the front (common practice, no source).
[[nodiscard]] EngineLayout defaultLayout();

/// Two turns of the crank, one cycle of a four-stroke engine, in tenths of a degree.
inline constexpr int kCycleTenths = 7200;

/// The layout if cylinders are numbered 1 to n without a gap, each fires once and each has its
/// intake and its exhaust spring on exactly one bank, intervals make up two turns, and an own round
/// goes to each place once; LogbookFault::BadLayout otherwise.
[[nodiscard]] Result<EngineLayout> checkedLayout(EngineLayout layout);

/// One line of JSON: {"banks":[{"name":"Left","places":["1E","1I",…]},…],"firing_order":[1,8,…]};
/// "firing_intervals" and "own_round" follow where there are such.
[[nodiscard]] QString layoutToText(const EngineLayout& layout);

/// Inverse of layoutToText, checked.
[[nodiscard]] Result<EngineLayout> layoutFromText(const QString& text);

} // namespace coilbook
