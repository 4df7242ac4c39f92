#pragma once

#include "core/units/spring_rate.h"

#include <optional>
#include <vector>

namespace coilbook::mechanics {

/// What is known of one place. Nothing is computed from what is not.
struct SeatFacts {
    std::optional<Force> seatPressure; ///< at the installed height, valve closed
    std::optional<Length> installed;   ///< installed height as measured
    std::optional<Length> nominal;     ///< the height that the pressures are to be compared at
    std::optional<SpringRate> rate;
    std::optional<Length> lift;     ///< at the valve
    std::optional<Length> coilBind; ///< height at which the coils touch
};

enum class SeatFact { SeatPressure, InstalledHeight, NominalHeight, Rate, Lift, CoilBindHeight };

/// A figure, or what it lacks.
template <class Quantity>
struct Figure {
    std::optional<Quantity> value;
    std::vector<SeatFact> missing; ///< empty if there is a value
};

/// What the spring would read at nominal height: reading + rate × (installed − nominal). A seat
/// that has sunk holds the spring at a greater height, where it pushes less and has worn no more.
[[nodiscard]] Figure<Force> pressureAtNominal(const SeatFacts& facts);

/// With the valve fully open: seat pressure + rate × lift.
[[nodiscard]] Figure<Force> openPressure(const SeatFacts& facts);

/// What is left between the coils at full lift: installed − lift − coil-bind height. Below 0 the
/// coils touch before the valve is open.
[[nodiscard]] Figure<Length> coilBindClearance(const SeatFacts& facts);

/// What of these facts cannot be.
enum class SeatFault {
    RateNotPositive,
    LengthNotPositive,
    CoilBindAboveInstalled, ///< also at the nominal height
    LiftBeyondCoilBind      ///< the coils would touch before full lift
};

/// The first of them, if there is one.
[[nodiscard]] std::optional<SeatFault> seatFault(const SeatFacts& facts);

} // namespace coilbook::mechanics
