#pragma once

#include <cstddef>
#include <limits>
#include <vector>

namespace coilbook::wear {

// The season of one engine as the wear model sees it (specification, section 1). Plain numbers in
// lbf and races ("exposure"): names, dates and units stay outside this folder's interface.

/// What the user has decided about a cell (section 7): it bears no event, or this one.
enum class Say { None, Kept, Misread, Drop };

/// The kept hits of one spring in one session (inspection).
struct Cell {
    std::size_t session = 0;
    double x = 0.0;               ///< exposure since installation
    double xExhaust = 0.0;        ///< part of x that was run in exhaust places
    int hits = 1;                 ///< kept hits
    double mean = 0.0;            ///< their mean, lbf
    double sumSquares = 0.0;      ///< within-cell sum of squares of the kept hits
    std::size_t tester = 0;       ///< of its first hit
    double fixedVariance = 0.0;   ///< vw/m + rho q²/12, the part of v that is plugged in
    Say say = Say::None;          ///< a drop is never said of the first cell
    std::vector<double> overRevs; ///< per over-rev column 1 if it lies in (install, cell], else 0
};

/// A jump of the pressure that is not wear (shim, valve-seat work …): flat local column, 1 from the
/// first cell after it.
struct LevelStep {
    std::size_t fromCell = 0;
};

constexpr std::size_t kStillFitted = std::numeric_limits<std::size_t>::max();

/// One spring in the engine from its baseline on.
struct Life {
    int kind = 0;           ///< 0 intake, 1 exhaust: where it stands now or stood last
    double installed = 0.0; ///< calendar exposure X0 at its baseline
    /// Session at which it was taken out (its last reading may be of that session); kStillFitted if
    /// it stands in the engine.
    std::size_t outSession = kStillFitted;
    double xNow = 0.0;
    double xExhaustNow = 0.0;
    std::vector<double> overRevsNow; ///< as Cell::overRevs, up to now
    std::vector<Cell> cells;         ///< ascending x, at least one
    std::vector<LevelStep> levelChanges;
};

struct Season {
    std::vector<double> sessions; ///< calendar exposure X_t, ascending; X_1 = 0
    double now = 0.0;             ///< calendar exposure X now
    std::size_t overRevs = 0;     ///< number of over-rev columns, at most 10
    bool runIn = false;           ///< springs run in before their baseline: no break-in terms
    int hitDegreesOfFreedom = 0;  ///< sum(m-1) over all cells: decides the prior of sigma
    std::vector<Life> lives;
};

/// The first `count` sessions of a season, as it stood after them: lives that begin later are left
/// out, "now" is the last session. `lives` names for each life kept its index in `season`.
[[nodiscard]] Season firstSessions(const Season& season, std::size_t count,
                                   std::vector<std::size_t>* lives = nullptr);

} // namespace coilbook::wear
