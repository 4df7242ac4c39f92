#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine.h"
#include "core/support/clock.h"
#include "core/wording/quantities.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace coilbook {

/// One place to be filled in by pen.
struct RoundFormPlace {
    Place place;
    QString label;  ///< of the spring that stands there; empty: not known
    QString latest; ///< its newest reading; empty: none

    bool operator==(const RoundFormPlace&) const = default;
};

/// The form that goes to the engine when no screen can: what is known is printed, the rest is left
/// to the pen.
struct RoundFormContent {
    QString engine;
    QString serial;
    QString racesRun; ///< so far
    QString unit;
    EngineLayout layout;
    std::vector<RoundFormPlace> places; ///< in the plan's order
    QStringList cautions;
    QString printedAt;
};

/// The form of an engine that holds the springs of its newest assessment.
[[nodiscard]] RoundFormContent roundFormContentOf(const Engine& engine,
                                                  const Assessment& assessment,
                                                  const Quantities& quantities,
                                                  const Moment& printedAt);

} // namespace coilbook
