#pragma once

#include "core/domain/place.h"
#include "core/units/temperature.h"
#include "core/units/typed_force.h"

#include <QDate>

#include <optional>
#include <string_view>

namespace coilbook {

/// Readers of single cells of an exchange file. Each returns nothing for a text that is not in the
/// form of its column. All but parseReading() pass over spaces around the text.

/// The largest count taken anywhere: races, hits, laps, rpm.
constexpr int kMostCount = 999'999;

/// Digits only, 0 to kMostCount.
[[nodiscard]] std::optional<int> parseCount(std::string_view cell);

/// `YYYY-MM-DD`, a day of the calendar.
[[nodiscard]] std::optional<QDate> parseDate(std::string_view cell);

/// `I`, `E`, `intake` or `exhaust`, in any case.
[[nodiscard]] std::optional<Valve> parseValve(std::string_view cell);

/// 1 to 4 digits and up to 6 decimals after a point; nothing else. Bounds are not checked.
[[nodiscard]] std::optional<TypedForce> parseReading(std::string_view cell, ForceUnit unit);

/// Degrees Celsius, −40 to 250 with up to 6 decimals, rounded to thousandths.
[[nodiscard]] std::optional<Temperature> parseTemperature(std::string_view cell);

/// `1` or `0`.
[[nodiscard]] std::optional<bool> parseFlag(std::string_view cell);

} // namespace coilbook
