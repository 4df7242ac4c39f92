#include "core/mechanics/seat_height.h"

namespace coilbook::mechanics {

namespace {

/// Collects what is not known among the facts that a figure needs.
class Needs {
public:
    template <class Quantity>
    Needs& of(const std::optional<Quantity>& fact, SeatFact name) {
        if (!fact) {
            m_missing.push_back(name);
        }
        return *this;
    }

    template <class Quantity, class Compute>
    [[nodiscard]] Figure<Quantity> figure(const Compute& compute) const {
        if (!m_missing.empty()) {
            return {std::nullopt, m_missing};
        }
        return {compute(), {}};
    }

private:
    std::vector<SeatFact> m_missing;
};

bool isAboveZero(const std::optional<Length>& length) {
    return !length || *length > Length();
}

} // namespace

Figure<Force> pressureAtNominal(const SeatFacts& facts) {
    return Needs()
        .of(facts.seatPressure, SeatFact::SeatPressure)
        .of(facts.installed, SeatFact::InstalledHeight)
        .of(facts.nominal, SeatFact::NominalHeight)
        .of(facts.rate, SeatFact::Rate)
        .figure<Force>([&] {
            return *facts.seatPressure + *facts.rate * (*facts.installed - *facts.nominal);
        });
}

Figure<Force> openPressure(const SeatFacts& facts) {
    return Needs()
        .of(facts.seatPressure, SeatFact::SeatPressure)
        .of(facts.rate, SeatFact::Rate)
        .of(facts.lift, SeatFact::Lift)
        .figure<Force>([&] { return *facts.seatPressure + *facts.rate * *facts.lift; });
}

Figure<Length> coilBindClearance(const SeatFacts& facts) {
    return Needs()
        .of(facts.installed, SeatFact::InstalledHeight)
        .of(facts.lift, SeatFact::Lift)
        .of(facts.coilBind, SeatFact::CoilBindHeight)
        .figure<Length>([&] { return *facts.installed - *facts.lift - *facts.coilBind; });
}

std::optional<SeatFault> seatFault(const SeatFacts& facts) {
    if (facts.rate && !(*facts.rate > SpringRate())) {
        return SeatFault::RateNotPositive;
    }
    if (!isAboveZero(facts.installed) || !isAboveZero(facts.nominal) || !isAboveZero(facts.lift) ||
        !isAboveZero(facts.coilBind)) {
        return SeatFault::LengthNotPositive;
    }
    for (const std::optional<Length>& height : {facts.installed, facts.nominal}) {
        if (height && facts.coilBind && *facts.coilBind >= *height) {
            return SeatFault::CoilBindAboveInstalled;
        }
        if (height && facts.coilBind && facts.lift &&
            (*height - *facts.lift - *facts.coilBind).inMicroInches() < 0) {
            return SeatFault::LiftBeyondCoilBind;
        }
    }
    return std::nullopt;
}

} // namespace coilbook::mechanics
