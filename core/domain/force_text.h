#pragma once

#include "core/units/typed_force.h"

#include <QString>
#include <QStringView>

#include <optional>

namespace coilbook {

// Forces as they stand in texts of the logbook: `121.50 lbf`, `538 N`.

[[nodiscard]] inline QString unitToText(ForceUnit unit) {
    return unit == ForceUnit::PoundForce ? QStringLiteral("lbf") : QStringLiteral("N");
}

[[nodiscard]] inline std::optional<ForceUnit> unitFromText(QStringView text) {
    for (const ForceUnit unit : {ForceUnit::PoundForce, ForceUnit::Newton}) {
        if (text == unitToText(unit)) {
            return unit;
        }
    }
    return std::nullopt;
}

[[nodiscard]] inline QString forceToText(const TypedForce& force) {
    return force.text() + QLatin1Char(' ') + unitToText(force.unit());
}

[[nodiscard]] inline std::optional<TypedForce> forceFromText(QStringView text) {
    const qsizetype space = text.indexOf(QLatin1Char(' '));
    if (space < 0) {
        return std::nullopt;
    }
    const std::optional<ForceUnit> unit = unitFromText(text.mid(space + 1));
    return unit ? TypedForce::parse(text.left(space), *unit) : std::nullopt;
}

} // namespace coilbook
