#pragma once

#include "core/assessment/assessment.h"
#include "ui/drawing/scheme.h"

#include <QRectF>

#include <optional>

class QPainter;

namespace coilbook {

/// What the mark of one spring shows.
struct StandingMark {
    Standing standing = Standing::NoTrend;
    /// Measured loss as a part of the limit: 0 = like new, 1 = at the limit; empty: not known.
    std::optional<double> used;

    bool operator==(const StandingMark&) const = default;
};

/// Measured loss over limit, with the standing beside it.
[[nodiscard]] StandingMark standingMarkOf(const SpringAssessment& spring,
                                          const JudgingRules& rules);

/// Our one mark for all standings: a small upright bar that fills from the top with the part of the
/// limit that is used up, with a line at 100 %; overflowing and hatched when past. It is told apart
/// without colour: past = hatched and overflowing, due = filled with a notch, sound = plain fill,
/// no trend = empty with a dashed outline. `area` in the painter's units; twice as tall as wide
/// looks right. Leaves the painter as it was.
void drawStandingMark(QPainter& painter, const QRectF& area, const StandingMark& mark,
                      const Scheme& scheme);

} // namespace coilbook
