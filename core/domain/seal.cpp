#include "core/domain/seal.h"

#include <algorithm>

namespace coilbook {

namespace {

bool isDecimalDigit(QChar character) {
    return character >= QLatin1Char('0') && character <= QLatin1Char('9');
}

bool isHexadecimalDigit(QChar character) {
    return isDecimalDigit(character) ||
           (character >= QLatin1Char('a') && character <= QLatin1Char('f'));
}

} // namespace

std::optional<NotedSeal> NotedSeal::parse(QStringView text) {
    text = text.trimmed();
    const qsizetype colon = text.indexOf(QLatin1Char(':'));
    if (colon < 1) {
        return std::nullopt;
    }
    const QStringView number = text.left(colon);
    const QString digest = text.mid(colon + 1).toString().toLower();
    if (!std::all_of(number.begin(), number.end(), isDecimalDigit) ||
        !std::all_of(digest.begin(), digest.end(), isHexadecimalDigit) ||
        digest.size() < kLeastDigits || digest.size() > kMostDigits) {
        return std::nullopt;
    }
    bool fits = false;
    const qint64 value = number.toLongLong(&fits);
    return fits && value >= 1 ? std::optional(NotedSeal{value, digest}) : std::nullopt;
}

QString NotedSeal::shortText() const {
    return QStringLiteral("%1:%2").arg(number).arg(digest.left(kShortDigits));
}

} // namespace coilbook
