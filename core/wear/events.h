#pragma once

#include "core/wear/season.h"

#include <cstddef>
#include <vector>

namespace coilbook::wear {

/// A reading or a stretch of readings that the trend alone does not explain (section 7).
struct Event {
    enum class Kind { Misread, Drop };

    std::size_t life = 0; ///< index in Season::lives
    std::size_t cell = 0; ///< index in Life::cells
    Kind kind = Kind::Misread;
    /// Newest reading of a fitted spring, low: misread and drop cannot be told apart yet. Coded as
    /// a drop.
    bool pending = false;
    bool byUser = false;         ///< said by the user: never judged, never taken out
    double logOddsMisread = 0.0; ///< last computed; LO_mis of section 7
    double logOddsDrop = 0.0;    ///< last computed; LO_drop of section 7
};

/// The events that the user has said (section 7): set-aside readings, drops confirmed and denied.
[[nodiscard]] std::vector<Event> eventsSaid(const Season& season);

} // namespace coilbook::wear
