#pragma once

#include "core/domain/engine_log.h"

#include <QString>

namespace coilbook::wording {

/// An amendment as a person reads it.
struct AmendmentWords {
    QString what;     ///< `3 E, hit 1 of 2026-05-02`, `Race 7, date`
    QString oldValue; ///< `(none)` where nothing was given
    QString newValue;

    bool operator==(const AmendmentWords&) const = default;
};

/// A force with the digits and the unit in which it was written: `117.25 lbf`.
[[nodiscard]] QString asTyped(const TypedForce& value);

/// An amended fact of a record of this engine.
[[nodiscard]] AmendmentWords amendmentWords(const Amendment& amendment, const EngineLog& log);

/// An amended reading: its correction or withdrawal against the row that it amends. Only what
/// differs is named. Precondition: `amendment.amends` is set.
[[nodiscard]] AmendmentWords amendmentWords(const Reading& amendment, const EngineLog& log);

} // namespace coilbook::wording
