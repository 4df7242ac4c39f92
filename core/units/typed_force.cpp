#include "core/units/typed_force.h"

#include <array>

namespace coilbook {

namespace {

constexpr std::array<std::int64_t, TypedForce::kMostDecimals + 1> kPowersOfTen{
    1, 10, 100, 1000, 10'000, 100'000, 1'000'000};

std::int64_t powerOfTen(int exponent) {
    return kPowersOfTen.at(static_cast<std::size_t>(exponent));
}

bool isDigit(QChar c) {
    return c >= QLatin1Char('0') && c <= QLatin1Char('9');
}

} // namespace

std::optional<TypedForce> TypedForce::parse(QStringView text, ForceUnit unit) {
    std::int64_t digits = 0;
    int whole = 0;
    int decimals = 0;
    bool afterMark = false;
    for (const QChar c : text) {
        if (isDigit(c)) {
            ++(afterMark ? decimals : whole);
            if (whole > kMostWholeDigits || decimals > kMostDecimals) {
                return std::nullopt;
            }
            digits = digits * 10 + (c.unicode() - u'0');
        } else if ((c == QLatin1Char('.') || c == QLatin1Char(',')) && !afterMark && whole > 0) {
            afterMark = true;
        } else {
            return std::nullopt;
        }
    }
    if (whole == 0 || (afterMark && decimals == 0)) {
        return std::nullopt;
    }
    return TypedForce(digits, decimals, unit);
}

Force TypedForce::force() const {
    // Both operands are exact in a double (at most ten digits), so the quotient is the double
    // nearest to the decimal.
    const double value =
        static_cast<double>(m_digits) / static_cast<double>(powerOfTen(m_decimals));
    return Force::of(value, m_unit);
}

QString TypedForce::text() const {
    const std::int64_t scale = powerOfTen(m_decimals);
    QString result = QString::number(m_digits / scale);
    if (m_decimals > 0) {
        result += QLatin1Char('.') +
                  QString::number(m_digits % scale).rightJustified(m_decimals, QLatin1Char('0'));
    }
    return result;
}

bool TypedForce::isWithinBounds() const {
    constexpr std::int64_t kMostMicroPoundsForce = 1'000'000'000;
    constexpr std::int64_t kMostMicroNewtons = 4'448'220'000;
    const std::int64_t micro = m_digits * powerOfTen(kMostDecimals - m_decimals);
    const std::int64_t most =
        m_unit == ForceUnit::PoundForce ? kMostMicroPoundsForce : kMostMicroNewtons;
    return micro > 0 && micro <= most;
}

} // namespace coilbook
