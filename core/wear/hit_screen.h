#pragma once

#include "core/wear/hit_noise.h"

#include <cstddef>
#include <span>
#include <vector>

namespace coilbook::wear {

/// Which hits of a group are left out of the estimate: indices into HitGroup::hits of the group as
/// given.
struct ScreenedHit {
    std::size_t group = 0;
    std::size_t hit = 0;
};

/// Takes out hits that lie too far from the other hits of their group (section 1, 'Hit screen').
/// `graduations` per tester, lbf. Groups must be sorted by session, and the groups of a life
/// ascend; they come back with the kept hits only. The hits taken out stay in the logbook.
/// Groups that the user keeps lose none.
std::vector<ScreenedHit> screenHits(std::vector<HitGroup>& groups,
                                    std::span<const double> graduations);

} // namespace coilbook::wear
