#pragma once

#include "core/units/force.h"
#include "core/units/length.h"

#include <compare>

namespace coilbook {

/// How much a spring pushes back for each unit of length that it is pressed together.
class SpringRate {
public:
    /// 1 lbf/in in N/mm, from the exact lbf and inch: 0.175 126 835… (NIST SP 811, appendix B.8).
    static constexpr double kNewtonsPerMillimetre =
        Force::kNewtonsPerPoundForce / Length::kMillimetresPerInch;

    constexpr SpringRate() = default;

    [[nodiscard]] static constexpr SpringRate poundsForcePerInch(double value) {
        return SpringRate(value);
    }

    [[nodiscard]] static constexpr SpringRate newtonsPerMillimetre(double value) {
        return SpringRate(value / kNewtonsPerMillimetre);
    }

    [[nodiscard]] constexpr double inPoundsForcePerInch() const { return m_lbfPerInch; }

    [[nodiscard]] constexpr double inNewtonsPerMillimetre() const {
        return m_lbfPerInch * kNewtonsPerMillimetre;
    }

    constexpr auto operator<=>(const SpringRate&) const = default;

private:
    explicit constexpr SpringRate(double lbfPerInch)
        : m_lbfPerInch(lbfPerInch) {}

    double m_lbfPerInch = 0.0;
};

[[nodiscard]] constexpr Force operator*(SpringRate rate, Length travel) {
    return Force::poundsForce(rate.inPoundsForcePerInch() * travel.inInches());
}

/// The travel that changes the force by `force`. Precondition: a rate above 0.
[[nodiscard]] constexpr Length operator/(Force force, SpringRate rate) {
    return Length::inches(force.inPoundsForce() / rate.inPoundsForcePerInch());
}

} // namespace coilbook
