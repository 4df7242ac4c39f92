#pragma once

#include <compare>
#include <cstdint>

namespace coilbook {

/// A temperature, kept in thousandths of a degree Celsius as the logbook stores it.
class Temperature {
public:
    constexpr Temperature() = default;

    [[nodiscard]] static constexpr Temperature milliCelsius(std::int32_t value) {
        return Temperature(value);
    }

    [[nodiscard]] constexpr std::int32_t inMilliCelsius() const { return m_milliCelsius; }

    [[nodiscard]] constexpr double inCelsius() const { return m_milliCelsius / 1000.0; }

    constexpr auto operator<=>(const Temperature&) const = default;

private:
    explicit constexpr Temperature(std::int32_t value)
        : m_milliCelsius(value) {}

    std::int32_t m_milliCelsius = 0;
};

} // namespace coilbook
