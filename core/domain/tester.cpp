#include "core/domain/tester.h"

#include "core/domain/force_text.h"

namespace coilbook {

QString zeroOffsetToText(const ZeroOffset& offset) {
    return (offset.below ? QStringLiteral("-") : QString()) + forceToText(offset.size);
}

std::optional<ZeroOffset> zeroOffsetFromText(QStringView text) {
    const bool below = text.startsWith(QLatin1Char('-'));
    const std::optional<TypedForce> size = forceFromText(below ? text.mid(1) : text);
    return size ? std::optional(ZeroOffset{*size, below}) : std::nullopt;
}

} // namespace coilbook
