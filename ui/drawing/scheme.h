#pragma once

#include "core/assessment/assessment.h"

#include <QColor>
#include <QPalette>

namespace coilbook {

/// The colours that our own drawing uses on one kind of ground. Derived from the eight colours of
/// Okabe & Ito (2008); text has a contrast of at least 4.5:1 on its ground, marks and lines 3:1
/// (WCAG 2.2, 1.4.3 and 1.4.11). On paper everything is black or grey.
struct Scheme {
    QColor ground; ///< behind everything
    QColor panel;  ///< behind a chart or a card
    QColor text;
    QColor mutedText;       ///< still 4.5:1
    QColor line;            ///< axes and frames
    QColor grid;            ///< faint helper lines, may be below 3:1
    QColor limit;           ///< the limit line
    QColor estimate;        ///< fitted line, projection
    QColor band;            ///< 90 % band, opaque
    QColor provisionalBand; ///< the same of an estimate that rests on few inspections
    QColor reading;         ///< outline of a reading
    QColor overRev;         ///< mark of an over-revved race
    QColor accent;          ///< the place that is in work now
    QColor pastLimit;
    QColor due;
    QColor sound;
    QColor noTrend;

    [[nodiscard]] QColor of(Standing standing) const;
};

[[nodiscard]] Scheme lightScheme();
[[nodiscard]] Scheme darkScheme();
[[nodiscard]] Scheme paperScheme();

/// The scheme that fits a widget's palette: dark when its window colour is darker than its text.
[[nodiscard]] Scheme schemeFor(const QPalette& palette);

/// Palette for the standard widgets in that scheme.
[[nodiscard]] QPalette paletteOf(const Scheme& scheme);

} // namespace coilbook
