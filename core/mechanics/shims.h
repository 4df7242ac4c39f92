#pragma once

#include "core/mechanics/seat_height.h"

#include <span>
#include <vector>

namespace coilbook::mechanics {

/// A clearance that is kept between the coils at full lift unless the user says otherwise (common
/// practice, no source; the engine builder's figure goes before it).
inline constexpr Length kUsualCoilBindClearance = Length::microInches(60000);

/// Shims that are under nobody's bench missing (common practice, no source).
[[nodiscard]] std::vector<Length> usualShims();

/// Most shims in one stack: a higher one is better replaced by a thicker shim.
inline constexpr int kMostShims = 3;

struct ShimProposal {
    std::vector<Length> stack; ///< thickest first
    Length thickness;          ///< of the stack
    Force seatPressure;        ///< with it, valve closed
    Force openPressure;        ///< with it, valve fully open
    Length clearance;          ///< left between the coils at full lift
};

/// Why there is no proposal.
enum class NoShim {
    FactsMissing,
    NothingToBringBack, ///< the pressure is there but for less than half the thinnest shim
    NoShims,            ///< the list is empty
    NoStackFits,        ///< the list cannot make the thickness within half its thinnest shim
    ClearanceTooSmall   ///< a stack would do, but leaves less than the clearance to keep
};

struct ShimAnswer {
    std::optional<ShimProposal> proposal;
    std::optional<NoShim> why;     ///< if there is none
    std::vector<SeatFact> missing; ///< for FactsMissing
    std::optional<Length> needed;  ///< the thickness that would bring all back
};

/// The stack of at most three of `shims` (each may be used more than once) that brings the seat
/// pressure closest to `wanted`, among those that leave `clearance` at full lift; of two as close
/// the one of fewer shims. Shims raise the seat, so a stack of thickness t adds rate × t.
/// Precondition: seatFault() finds nothing, shims above 0.
[[nodiscard]] ShimAnswer proposeShims(const SeatFacts& facts, Force wanted,
                                      std::span<const Length> shims, Length clearance);

} // namespace coilbook::mechanics
