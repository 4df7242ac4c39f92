#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/testers/reading_corrections.h"

#include <QDate>

#include <optional>
#include <vector>

namespace coilbook {

/// What a chart of one spring shows, ready to be drawn: on screen by ui/charts, on paper by
/// ui/printing. The horizontal axis counts the engine's races; the vertical one is the loss since
/// the spring's baseline, growing downward. A reading stands there twice: as read, the measured
/// loss (measured baseline minus reading, the rule of record); and corrected, counted from the
/// fitted baseline with the inspection's shift taken out, which is what the estimate goes through.
struct LossChart {
    struct Point {
        InspectionId inspection;
        double races = 0.0; ///< engine count
        Force loss;
        Force pressure;
        CorrectedReading reading; ///< the same, with what the estimate made of it
        QDate on;
        int hits = 0;
        QString tester;                 ///< empty: not noted
        std::optional<Force> corrected; ///< loss; empty without an estimate
        std::optional<Force> shift;     ///< of its inspection, if that is flagged as shifted
        int hitsSetAside = 0;           ///< of `hits`: too far from the others to count
        std::optional<EventFinding> event;

        /// Left out of the estimate, still shown.
        [[nodiscard]] bool isSetAside() const {
            return event && event->kind == EventFinding::Kind::Misread;
        }
    };

    struct BandPoint {
        double races = 0.0;
        Force mean;
        Force low90;
        Force high90;
    };

    struct Mark {
        enum class Kind { Swap, OverRev, LevelChange, Running };
        Kind kind = Kind::Swap;
        double races = 0.0;
        QDate on;
        QString text; ///< label of the spring put in, peak rpm, or the note; may be empty
    };

    SpringId spring;
    QString label;
    Place place;
    std::optional<Force> baseline;
    bool provisional = false;          ///< the estimate rests on two or three inspections
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
