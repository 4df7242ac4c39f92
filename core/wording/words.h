#pragma once

#include "core/support/error.h"
#include "core/support/text.h"

#include <QCoreApplication>
#include <QString>

namespace coilbook::wording {

/// The translation context of all text that core has for people: `Words::tr("…")`.
/// Fill places with the form of arg() that takes several texts at once: it does not look for places
/// inside what it puts in, and names from a logbook may hold a `%1`.
class Words {
    Q_DECLARE_TR_FUNCTIONS(Words)
};

/// `1 race`, `9 races`: English has its two forms here, other languages have theirs in their
/// translation of the second.
[[nodiscard]] inline QString races(int count) {
    return count == 1 ? Words::tr("1 race") : Words::tr("%n races", nullptr, count);
}

/// An argument of an error, fit for a message; empty if it was not given.
[[nodiscard]] inline QString argument(const Error& error, qsizetype index) {
    return shown(error.arguments.value(index));
}

} // namespace coilbook::wording
