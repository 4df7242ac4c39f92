#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"
#include "core/domain/history.h"

#include <QDate>

#include <optional>
#include <vector>

namespace coilbook {

/// What a chart of one spring shows, ready to be drawn: on screen by ui/charts, on paper by
/// ui/printing. The horizontal axis counts the engine's races; the vertical one is the loss since
/// the spring's baseline, growing downward. Readings are measured losses (measured baseline minus
/// reading, the rule of record); the estimate counts from the fitted baseline, so it begins at 0
/// and stands apart from the readings by as much as the one baseline reading was off.
struct LossChart {
    struct Point {
        double races = 0.0; ///< engine count
        Force loss;
        Force pressure;
        QDate on;
        int hits = 0;
        QString tester;         ///< empty: not noted
        bool corrected = false; ///< with the inspection's shift taken out
        bool setAside = false;  ///< left out of the estimate, still shown
    };

    struct BandPoint {
        double races = 0.0;
        Force mean;
        Force low90;
        Force high90;
        bool hasBounds = true;
    };

    struct Mark {
        enum class Kind { Swap, OverRev };
        Kind kind = Kind::Swap;
        double races = 0.0;
        QDate on;
        QString text; ///< label of the spring put in, or peak rpm; may be empty
    };

    SpringId spring;
    QString label;
    Place place;
    std::optional<Force> baseline;
    std::vector<Point> readings;       ///< means of the inspections, in order
    std::vector<BandPoint> estimate;   ///< from the baseline to now
    std::vector<BandPoint> projection; ///< from now on, races ahead
    std::vector<Mark> marks;
    Force limit;
};

/// The range that all charts of an engine share, so that slopes and levels compare by eye. Both
/// ends of both axes are whole multiples of their tick.
struct LossChartRange {
    double firstRace = 0.0;
    double lastRace = 1.0; ///< includes the races ahead
    double raceTick = 1.0;
    Force least; ///< top of the axis, 0 or less
    Force most;  ///< bottom, beyond the limit
    Force tick;  ///< round in the unit that the range was made for
};

/// The chart of one assessed spring.
[[nodiscard]] LossChart lossChartOf(const EngineHistory& history, const Assessment& assessment,
                                    const SpringAssessment& spring);

/// A common range with round ends for all of them; never empty. It holds 0, the limit, all
/// readings, estimates and projections; bounds as far as one limit beyond the limit and half a
/// limit below 0, since the wide bounds of a young trend would flatten everything else.
[[nodiscard]] LossChartRange commonRange(const std::vector<LossChart>& charts,
                                         const Assessment& assessment,
                                         ForceUnit unit = ForceUnit::PoundForce);

/// The smallest of 1, 2, 5 × 10ⁿ that divides `span` > 0 into at most `intervals` pieces.
[[nodiscard]] double roundTick(double span, int intervals);

} // namespace coilbook
