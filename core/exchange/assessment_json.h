#pragma once

#include "core/assessment/assessment.h"

#include <QByteArray>

#include <span>

namespace coilbook {

/// What `assess --json` prints: one array, an object per engine, by name in code points. lbf and
/// races; forces with 4 decimals, probabilities with 6, never an exponent or NaN; reasons in
/// English. What cannot be told is null: an estimate that has a mean but no bounds (two
/// inspections) is {"mean": x, "low90": null, "high90": null}; `as_of` is null without any data;
/// `races_left` is null where nothing can be said, and a member of it where it lies beyond 60.
[[nodiscard]] QByteArray assessmentsToJson(std::span<const Assessment> assessments);

} // namespace coilbook
