#pragma once

#include "core/assessment/swap_plan.h"
#include "core/domain/engine_log.h"
#include "core/support/clock.h"
#include "core/wording/quantities.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace coilbook {

/// One spring as the plan shows it.
struct PlanRow {
    Place place;
    QString spring;
    QString standing;
    QString changeBefore;                   ///< day and venue of a race, or a dash
    std::optional<std::size_t> changeIndex; ///< of that race
    QStringList odds;                       ///< per race, `12 %`; empty: nothing can be said

    bool operator==(const PlanRow&) const = default;
};

/// One coming race as the plan shows it: what it asks of the set and of the shelf.
struct PlanRace {
    QString day;
    QString venue;
    QString laps;       ///< empty: not known
    QString due;        ///< springs that will likely have reached the limit, on the mean
    QString needed;     ///< springs to have on the shelf
    QString dueRenewed; ///< the same with a whole new set
    QString neededRenewed;

    bool operator==(const PlanRace&) const = default;
};

/// Something else that is to be done before a race: it stands below the springs.
struct PlanLine {
    QString when; ///< a day, a race or a count; may be empty
    QString what; ///< one whole sentence

    bool operator==(const PlanLine&) const = default;
};

/// The swap plan as it is shown and printed, in words and numbers; the same for window and paper.
struct PlanContent {
    QString engine;
    QString serial;
    QString asOf;
    QString racesRun;
    QString limit;
    std::vector<PlanRace> races;
    std::vector<PlanRow> rows; ///< those to be changed first on top, then by place
    QStringList summary;       ///< what to change now, what to have on the shelf, what a new set
                               ///< would change, and what the plan does not know
    std::vector<PlanLine> lines;
    QStringList cautions;
    QString printedAt;
};

/// `more`: further lines, of findings and service that is due.
[[nodiscard]] PlanContent planContentOf(const EngineLog& log, const SwapPlan& plan, int onShelf,
                                        const std::vector<PlanLine>& more,
                                        const Quantities& quantities, const Moment& printedAt);

/// How many springs lie on the shelf of an engine.
[[nodiscard]] int springsOnShelf(const EngineLog& log, const EngineHistory& history);

} // namespace coilbook
