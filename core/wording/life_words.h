#pragma once

#include "core/assessment/spring_lives.h"

#include <QString>

namespace coilbook::wording {

/// What a group of lives is called: its name, `not noted`, or the kind of valve.
[[nodiscard]] QString lifeGroup(const LifeGroup& group);

/// `half of them last 9 races (likely between 7 and 12)`, or why that cannot be told yet.
[[nodiscard]] QString medianLife(const LifeGroup& group);

/// Whether the groups last alike, in one sentence; what is missing where that cannot be told.
[[nodiscard]] QString lifeDifference(const LifeComparison& comparison);

/// `running`, `reached the limit`, `taken out`.
[[nodiscard]] QString lifeEnd(LifeEnd end);

/// `Heron 4 E 2026-03-21 to 2026-07-27 (8 races)`.
[[nodiscard]] QString lifeStay(const LifeStay& stay);

} // namespace coilbook::wording
