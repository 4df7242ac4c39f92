#pragma once

#include "core/support/clock.h"
#include "core/support/result.h"

#include <QString>

namespace coilbook {

/// Writes a new logbook with the season of an invented team: two engines, testers, races and
/// readings that hold a cause for every standing and flag. StorageFault::AlreadyExists if the path
/// is taken; a failure leaves no file behind.
[[nodiscard]] Result<void> writeDemo(const QString& path, const Clock& clock);

} // namespace coilbook
