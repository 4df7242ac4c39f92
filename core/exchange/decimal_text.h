#pragma once

#include <QString>

#include <cstdint>
#include <cstdlib>

namespace coilbook {

/// `units` / 10^`decimals` in the shortest plain form: decimalText(85500, 3) is `85.5`.
[[nodiscard]] inline QString decimalText(std::int64_t units, int decimals) {
    QString digits =
        QString::number(std::abs(units)).rightJustified(decimals + 1, QLatin1Char('0'));
    digits.insert(digits.size() - decimals, QLatin1Char('.'));
    while (digits.endsWith(QLatin1Char('0'))) {
        digits.chop(1);
    }
    if (digits.endsWith(QLatin1Char('.'))) {
        digits.chop(1);
    }
    return units < 0 ? QLatin1Char('-') + digits : digits;
}

} // namespace coilbook
