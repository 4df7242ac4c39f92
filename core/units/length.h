#pragma once

#include <compare>
#include <cstdint>

namespace coilbook {

enum class LengthUnit { Inch, Millimetre };

/// A length: an installed height, a lift, the thickness of a shim or of wire. A missing length is
/// an empty optional.
class Length {
public:
    /// 1 in in millimetres, exact (NIST SP 811, appendix B.8).
    static constexpr double kMillimetresPerInch = 25.4;
    static constexpr double kMicroInchesPerInch = 1e6;

    constexpr Length() = default;

    [[nodiscard]] static constexpr Length inches(double value) { return Length(value); }

    [[nodiscard]] static constexpr Length millimetres(double value) {
        return Length(value / kMillimetresPerInch);
    }

    [[nodiscard]] static constexpr Length of(double value, LengthUnit unit) {
        return unit == LengthUnit::Inch ? inches(value) : millimetres(value);
    }

    /// As the logbook stores it.
    [[nodiscard]] static constexpr Length microInches(std::int64_t value) {
        return Length(static_cast<double>(value) / kMicroInchesPerInch);
    }

    [[nodiscard]] constexpr double inInches() const { return m_inches; }

    [[nodiscard]] constexpr double inMillimetres() const { return m_inches * kMillimetresPerInch; }

    [[nodiscard]] constexpr double in(LengthUnit unit) const {
        return unit == LengthUnit::Inch ? inInches() : inMillimetres();
    }

    /// To the nearest, which is finer than any gauge of a shop. Precondition: below 1e12 in size.
    [[nodiscard]] constexpr std::int64_t inMicroInches() const {
        const double micro = m_inches * kMicroInchesPerInch;
        return static_cast<std::int64_t>(micro < 0.0 ? micro - 0.5 : micro + 0.5);
    }

    constexpr auto operator<=>(const Length&) const = default;

    constexpr Length operator+(Length other) const { return Length(m_inches + other.m_inches); }

    constexpr Length operator-(Length other) const { return Length(m_inches - other.m_inches); }

    constexpr Length operator-() const { return Length(-m_inches); }

    constexpr double operator/(Length other) const { return m_inches / other.m_inches; }

private:
    explicit constexpr Length(double inches)
        : m_inches(inches) {}

    double m_inches = 0.0;
};

} // namespace coilbook
