#pragma once

#include <compare>

namespace coilbook {

enum class ForceUnit { PoundForce, Newton };

/// A force. Seat pressure and its loss are forces; "per race" quantities are the force lost in one
/// race. A missing force is an empty optional, never 0 or NaN.
class Force {
public:
    /// 1 lbf in newtons, exact: 0.45359237 kg × 9.80665 m/s² (NIST SP 811, appendix B.8).
    static constexpr double kNewtonsPerPoundForce = 4.4482216152605;

    constexpr Force() = default;

    [[nodiscard]] static constexpr Force poundsForce(double value) { return Force(value); }

    [[nodiscard]] static constexpr Force newtons(double value) {
        return Force(value / kNewtonsPerPoundForce);
    }

    [[nodiscard]] static constexpr Force of(double value, ForceUnit unit) {
        return unit == ForceUnit::PoundForce ? poundsForce(value) : newtons(value);
    }

    [[nodiscard]] constexpr double inPoundsForce() const { return m_lbf; }

    [[nodiscard]] constexpr double inNewtons() const { return m_lbf * kNewtonsPerPoundForce; }

    [[nodiscard]] constexpr double in(ForceUnit unit) const {
        return unit == ForceUnit::PoundForce ? inPoundsForce() : inNewtons();
    }

    constexpr auto operator<=>(const Force&) const = default;

    constexpr Force operator+(Force other) const { return Force(m_lbf + other.m_lbf); }

    constexpr Force operator-(Force other) const { return Force(m_lbf - other.m_lbf); }

    constexpr Force operator-() const { return Force(-m_lbf); }

    constexpr Force operator*(double factor) const { return Force(m_lbf * factor); }

    constexpr Force operator/(double divisor) const { return Force(m_lbf / divisor); }

    constexpr double operator/(Force other) const { return m_lbf / other.m_lbf; }

private:
    explicit constexpr Force(double lbf)
        : m_lbf(lbf) {}

    double m_lbf = 0.0;
};

/// Whether a measured loss has reached a limit. Readings are decimals, their means and differences
/// carry binary rounding of at most about 1e-12 lbf; a loss of exactly the limit must count.
[[nodiscard]] constexpr bool reaches(Force loss, Force limit) {
    return loss.inPoundsForce() >= limit.inPoundsForce() - 1e-9;
}

} // namespace coilbook
