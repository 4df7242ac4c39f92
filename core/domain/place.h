#pragma once

#include <QString>

#include <compare>

namespace coilbook {

/// Which of the two valves of a cylinder. Intake sorts before exhaust.
enum class Valve { Intake, Exhaust };

/// A cylinder by its number as the engine's builder counts, the first being 1.
class Cylinder {
public:
    static constexpr int kMost = 24;

    constexpr Cylinder() = default;

    explicit constexpr Cylinder(int number)
        : m_number(number) {}

    [[nodiscard]] constexpr int number() const { return m_number; }

    constexpr auto operator<=>(const Cylinder&) const = default;

private:
    int m_number = 1;
};

/// Where a spring sits: a cylinder's intake or exhaust valve. Sorts by cylinder, I before E.
struct Place {
    Cylinder cylinder;
    Valve valve = Valve::Intake;

    constexpr auto operator<=>(const Place&) const = default;
};

[[nodiscard]] inline QString valveLetter(Valve valve) {
    return valve == Valve::Intake ? QStringLiteral("I") : QStringLiteral("E");
}

/// `3 E`, the short form of the trade, the same in every language.
[[nodiscard]] inline QString placeText(const Place& place) {
    return QStringLiteral("%1 %2").arg(place.cylinder.number()).arg(valveLetter(place.valve));
}

} // namespace coilbook
