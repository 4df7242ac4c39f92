#include "core/services/crank_step.h"

#include "core/domain/crank.h"

namespace coilbook {

CrankStep crankStepTo(std::size_t stop, const Round& round, const EngineLayout& layout) {
    const Cylinder there = round.stops().at(stop).place.cylinder;
    const std::optional<Place> last = round.lastRead();
    return {there, last ? std::optional(turnBetween(layout, last->cylinder, there)) : std::nullopt};
}

} // namespace coilbook
