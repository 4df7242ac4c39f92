#pragma once

#include "core/domain/current_readings.h"
#include "core/domain/engine_log.h"

#include <QDate>

#include <optional>
#include <vector>

namespace coilbook {

/// A spring stood at a place from one moment to another. A moment is a day and a count of races.
struct FittingSpan {
    SpringId spring;
    Place place;
    QDate fittedOn;
    int fittedRaces = 0;
    QDate endedOn;                 ///< null: still fitted
    std::optional<int> endedRaces; ///< empty: still fitted

    bool operator==(const FittingSpan&) const = default;
};

/// All fittings of an engine up to and including `asOf`, in order of place, then of fitting. They
/// follow from readings (a spring read at a place stands there) and from explicit fittings:
/// a spring stands at its place until another one does or until it stands elsewhere. Where two
/// springs are read at one place in one inspection, the one that stood there before is taken out
/// and the other one put in.
[[nodiscard]] std::vector<FittingSpan>
fittingSpans(const EngineLog& log, const std::vector<CurrentHit>& hits, const QDate& asOf);

} // namespace coilbook
