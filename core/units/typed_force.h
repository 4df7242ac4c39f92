#pragma once

#include "core/units/force.h"

#include <QString>
#include <QStringView>

#include <cstdint>
#include <optional>

namespace coilbook {

/// A force exactly as somebody wrote it: the integer of its digits, the number of decimals and the
/// unit, so that `121.50` stays `121.50`. It becomes a quantity in memory only.
class TypedForce {
public:
    static constexpr int kMostDecimals = 6;
    static constexpr int kMostWholeDigits = 4;

    /// `digits` / 10^`decimals` in `unit`. Precondition: digits >= 0, 0 <= decimals <= 6.
    constexpr TypedForce(std::int64_t digits, int decimals, ForceUnit unit)
        : m_digits(digits)
        , m_decimals(decimals)
        , m_unit(unit) {}

    /// Reads 1 to 4 digits with up to 6 decimals after `.` or `,`; no sign, exponent, group
    /// separator or space inside. Nothing is returned for any other text. The value is not
    /// checked against bounds; see isWithinBounds().
    [[nodiscard]] static std::optional<TypedForce> parse(QStringView text, ForceUnit unit);

    [[nodiscard]] constexpr std::int64_t digits() const { return m_digits; }

    [[nodiscard]] constexpr int decimals() const { return m_decimals; }

    [[nodiscard]] constexpr ForceUnit unit() const { return m_unit; }

    /// The quantity, correctly rounded from the decimal as written.
    [[nodiscard]] Force force() const;

    /// The digits as written, with `.` as decimal mark and no unit; `parse` gives them back.
    [[nodiscard]] QString text() const;

    /// Above 0 and at most 1000 lbf or 4448.22 N.
    [[nodiscard]] bool isWithinBounds() const;

    bool operator==(const TypedForce&) const = default;

private:
    std::int64_t m_digits;
    int m_decimals;
    ForceUnit m_unit;
};

} // namespace coilbook
