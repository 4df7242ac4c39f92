#include "core/mechanics/shims.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <functional>
#include <utility>

namespace coilbook::mechanics {

namespace {

using Stack = std::vector<Length>;

/// All stacks of one to kMostShims shims, thickest first within each.
void addStacks(std::span<const Length> shims, const Stack& begun, std::vector<Stack>& stacks) {
    if (begun.size() == static_cast<std::size_t>(kMostShims)) {
        return;
    }
    for (std::size_t i = 0; i < shims.size(); ++i) {
        Stack longer = begun;
        longer.push_back(shims[i]);
        stacks.push_back(longer);
        addStacks(shims.subspan(i), longer, stacks);
    }
}

Length thicknessOf(const Stack& stack) {
    Length sum;
    for (const Length& shim : stack) {
        sum = sum + shim;
    }
    return sum;
}

std::int64_t distance(Length a, Length b) {
    return std::abs((a - b).inMicroInches());
}

ShimAnswer without(NoShim why, Length needed) {
    return {std::nullopt, why, {}, needed};
}

} // namespace

std::vector<Length> usualShims() {
    return {Length::microInches(15000), Length::microInches(30000), Length::microInches(60000)};
}

ShimAnswer proposeShims(const SeatFacts& facts, Force wanted, std::span<const Length> shims,
                        Length clearance) {
    const Figure<Force> open = openPressure(facts);
    const Figure<Length> room = coilBindClearance(facts);
    if (!open.value || !room.value) {
        std::vector<SeatFact> missing = open.missing;
        for (const SeatFact fact : room.missing) {
            if (std::find(missing.begin(), missing.end(), fact) == missing.end()) {
                missing.push_back(fact);
            }
        }
        return {std::nullopt, NoShim::FactsMissing, missing, std::nullopt};
    }
    const Length needed = (wanted - *facts.seatPressure) / *facts.rate;
    if (shims.empty()) {
        return without(NoShim::NoShims, needed);
    }
    const Length thinnest = *std::min_element(shims.begin(), shims.end());
    const std::int64_t close = thinnest.inMicroInches() / 2;
    if (needed.inMicroInches() < close) {
        return without(NoShim::NothingToBringBack, needed);
    }
    Stack sorted(shims.begin(), shims.end());
    std::sort(sorted.begin(), sorted.end(), std::greater<>());
    std::vector<Stack> stacks;
    addStacks(sorted, {}, stacks);
    std::erase_if(stacks,
                  [&](const Stack& stack) { return distance(thicknessOf(stack), needed) > close; });
    if (stacks.empty()) {
        return without(NoShim::NoStackFits, needed);
    }
    std::erase_if(stacks, [&](const Stack& stack) {
        // In the steps that lengths are stored in, so that sums of decimals compare.
        return (*room.value - thicknessOf(stack) - clearance).inMicroInches() < 0;
    });
    if (stacks.empty()) {
        return without(NoShim::ClearanceTooSmall, needed);
    }
    const Stack best =
        *std::min_element(stacks.begin(), stacks.end(), [&](const Stack& a, const Stack& b) {
            return std::pair(distance(thicknessOf(a), needed), a.size()) <
                   std::pair(distance(thicknessOf(b), needed), b.size());
        });
    const Length thickness = thicknessOf(best);
    const Force more = *facts.rate * thickness;
    return {ShimProposal{best, thickness, *facts.seatPressure + more, *open.value + more,
                         *room.value - thickness},
            std::nullopt,
            {},
            needed};
}

} // namespace coilbook::mechanics
