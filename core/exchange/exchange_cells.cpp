#include "core/exchange/exchange_cells.h"

#include <algorithm>
#include <charconv>

namespace coilbook {

namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

std::string_view withoutSpaces(std::string_view cell) {
    while (!cell.empty() && cell.front() == ' ') {
        cell.remove_prefix(1);
    }
    while (!cell.empty() && cell.back() == ' ') {
        cell.remove_suffix(1);
    }
    return cell;
}

/// Digits only, so no sign; nothing if there are none or too many for an int.
std::optional<int> parseDigits(std::string_view text) {
    int value = 0;
    const char* end = text.data() + text.size();
    if (text.empty() || !isDigit(text.front())) {
        return std::nullopt;
    }
    const std::from_chars_result result = std::from_chars(text.data(), end, value);
    return result.ec == std::errc() && result.ptr == end ? std::optional(value) : std::nullopt;
}

bool isSameButForCase(std::string_view text, std::string_view lower) {
    return std::equal(text.begin(), text.end(), lower.begin(), lower.end(), [](char a, char b) {
        return (a >= 'A' && a <= 'Z' ? a + ('a' - 'A') : a) == b;
    });
}

} // namespace

std::optional<int> parseCount(std::string_view cell) {
    const std::optional<int> value = parseDigits(withoutSpaces(cell));
    return value && *value <= kMostCount ? value : std::nullopt;
}

std::optional<QDate> parseDate(std::string_view cell) {
    const std::string_view text = withoutSpaces(cell);
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const std::optional<int> year = parseDigits(text.substr(0, 4));
    const std::optional<int> month = parseDigits(text.substr(5, 2));
    const std::optional<int> day = parseDigits(text.substr(8, 2));
    if (!year || !month || !day || !QDate::isValid(*year, *month, *day)) {
        return std::nullopt;
    }
    return QDate(*year, *month, *day);
}

std::optional<Valve> parseValve(std::string_view cell) {
    const std::string_view text = withoutSpaces(cell);
    if (isSameButForCase(text, "i") || isSameButForCase(text, "intake")) {
        return Valve::Intake;
    }
    if (isSameButForCase(text, "e") || isSameButForCase(text, "exhaust")) {
        return Valve::Exhaust;
    }
    return std::nullopt;
}

std::optional<TypedForce> parseReading(std::string_view cell, ForceUnit unit) {
    constexpr std::size_t kMostWhole = TypedForce::kMostWholeDigits;
    constexpr std::size_t kMostDecimals = TypedForce::kMostDecimals;
    const std::size_t point = std::min(cell.find('.'), cell.size());
    const std::string_view whole = cell.substr(0, point);
    const std::string_view decimals = cell.substr(std::min(point + 1, cell.size()));
    const bool hasPoint = point < cell.size();
    if (whole.empty() || whole.size() > kMostWhole || decimals.size() > kMostDecimals ||
        hasPoint == decimals.empty()) {
        return std::nullopt;
    }
    std::int64_t digits = 0;
    for (const std::string_view part : {whole, decimals}) {
        for (const char c : part) {
            if (!isDigit(c)) {
                return std::nullopt;
            }
            digits = digits * 10 + (c - '0');
        }
    }
    return TypedForce(digits, static_cast<int>(decimals.size()), unit);
}

std::optional<Temperature> parseTemperature(std::string_view cell) {
    std::string_view text = withoutSpaces(cell);
    const bool isNegative = !text.empty() && text.front() == '-';
    text.remove_prefix(isNegative ? 1 : 0);
    // The grammar behind the sign is that of a reading.
    const std::optional<TypedForce> magnitude = parseReading(text, ForceUnit::Newton);
    if (!magnitude) {
        return std::nullopt;
    }
    std::int64_t micro = magnitude->digits();
    for (int decimals = magnitude->decimals(); decimals < TypedForce::kMostDecimals; ++decimals) {
        micro *= 10;
    }
    if (micro > (isNegative ? 40'000'000 : 250'000'000)) {
        return std::nullopt;
    }
    const auto milli = static_cast<std::int32_t>((micro + 500) / 1000);
    return Temperature::milliCelsius(isNegative ? -milli : milli);
}

std::optional<bool> parseFlag(std::string_view cell) {
    const std::string_view text = withoutSpaces(cell);
    if (text == "1" || text == "0") {
        return text == "1";
    }
    return std::nullopt;
}

} // namespace coilbook
