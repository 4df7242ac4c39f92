#pragma once

#include "core/demo/demo_seasons.h"
#include "core/domain/changes.h"

#include <vector>

namespace coilbook::demo {

/// What the users of an engine entered over its season, as the changes that they made one after
/// the other. `testers` are those of the logbook, found by name. The readings follow from the
/// season's causes and a fixed pseudo-random noise; equal seasons give equal readings.
[[nodiscard]] std::vector<Change> changesOf(const DemoSeason& season,
                                            const std::vector<Tester>& testers);

/// The testers of the invented team.
[[nodiscard]] std::vector<Tester> teamTesters();

} // namespace coilbook::demo
