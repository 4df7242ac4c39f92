#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/loss_chart.h"
#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/domain/seal.h"
#include "core/support/clock.h"
#include "core/wording/quantities.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace coilbook {

/// What the printed sheets say, as data. Quantities and dates are written out here, through the
/// same Quantities as in the window, so that paper and screen agree to the digit; an empty text
/// stands for "not known". Where things go on the page is the business of ui/printing.

/// A tester that was used in the inspection on the sheet.
struct SheetTester {
    QString name;
    QString range;        ///< full scale as noted, `160 lbf`
    QString calibratedOn; ///< date

    bool operator==(const SheetTester&) const = default;
};

/// One place of the engine and the spring in it.
struct SheetSpring {
    Place place;
    QString label; ///< empty: no spring is noted at this place
    QString baseline;
    QString latest;
    QString loss; ///< measured: baseline minus latest
    /// Day of the latest reading if it is older than the inspection on the sheet.
    QString latestOn;
    /// The latest reading as the estimate uses it; empty: as it was read.
    QString latestCorrected;
    Standing standing = Standing::NoTrend;
    QString standingWords;
    std::optional<double> usedOfLimit; ///< measured loss over limit
    std::optional<PastBy> pastBy;
    QString estimatedLoss; ///< set where the standing rests on the estimate
    bool offTrend = false;
    bool provisional = false; ///< the standing rests on few inspections
    LossChart chart;
};

/// One amendment: what was written, what is written now, by whom and why.
struct SheetAmendment {
    QString on; ///< local date; empty: not known
    QString what;
    QString oldValue;
    QString newValue;
    QString who;
    QString why;

    bool operator==(const SheetAmendment&) const = default;
};

/// The spring sheet for tech inspection: one engine after its newest inspection.
struct SheetContent {
    QString engine;
    QString serial;
    QString inspectedOn;      ///< empty: no inspection yet
    QString inspectedAtRaces; ///< races run at that inspection
    QString asOf;             ///< the day of judgement
    QString racesRun;         ///< up to that day
    std::vector<SheetTester> testers;
    QStringList testerNotes; ///< overdue calibrations, and what readings were corrected by
    QStringList inspectors;
    QString limit; ///< with unit
    QString unit;  ///< of all forces below
    QString shift; ///< that all readings of the inspection are off, and what to do; empty: no
    QStringList notCounted;   ///< readings left out of the trends, each with who says so
    QStringList levelChanges; ///< work that changed the pressure of springs now fitted
    int racesAhead = 0;
    EngineLayout layout;
    std::vector<SheetSpring> springs; ///< in the plan's order: bank by bank, front to rear
    LossChartRange range;             ///< common to all charts
    QString rangeLeast;               ///< its ends as written
    QString rangeMost;
    QString amendedSince; ///< day of the previous inspection; empty: there is none
    std::vector<SheetAmendment> amendments; ///< newest first
    QStringList cautions;
    QString printedAt; ///< local date and time with offset
    QString seal; ///< the newest over the engine's data, number and digits; empty: there is none
};

/// The sheet of an engine. `history` and `assessment` belong together and may end on an earlier
/// day than the log; what was recorded for later days is left out.
[[nodiscard]] SheetContent sheetContentOf(const EngineLog& log, const EngineHistory& history,
                                          const Assessment& assessment,
                                          const Quantities& quantities, const Moment& printedAt,
                                          const std::optional<NotedSeal>& seal = {});

/// `2026-05-02 18:30 UTC+02:00`; empty for an unknown moment.
[[nodiscard]] QString printedMoment(const Moment& moment);

} // namespace coilbook
