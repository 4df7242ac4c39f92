#pragma once

#include "core/domain/engine_layout.h"
#include "core/support/result.h"

#include <QString>

namespace coilbook {

/// An engine's layout as people write it. Banks: one a line, left to right as seen from above with
/// the front at the top, `Left: 1E 1I 3I 3E …` from front to rear; without a colon the bank has no
/// name. Firing order: `1 8 4 3 …`, separated by spaces, commas or hyphens. Intervals: degrees of
/// crank with at most one decimal, `75 105 …`, or nothing for an even-fire engine. Own round:
/// `1E 1I …` or nothing.
struct LayoutText {
    QString banks;
    QString firingOrder;
    QString intervals;
    QString ownRound;

    bool operator==(const LayoutText&) const = default;
};

[[nodiscard]] LayoutText writeLayout(const EngineLayout& layout);

/// Reads it, in capitals or small letters; LogbookFault::BadLayout names the first word that does
/// not fit.
[[nodiscard]] Result<EngineLayout> readLayout(const LayoutText& text);

} // namespace coilbook
