#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/wording/quantities.h"

#include <QStringList>

namespace coilbook {

/// Readings and hits of the springs now fitted that do not count in their trends, each with who
/// says so: the user by name, or the trend itself.
[[nodiscard]] QStringList notCountedOf(const EngineLog& log, const EngineHistory& history,
                                       const Assessment& assessment, const Quantities& quantities);

/// Level changes of the springs now fitted.
[[nodiscard]] QStringList levelChangesOf(const EngineHistory& history,
                                         const Quantities& quantities);

} // namespace coilbook
