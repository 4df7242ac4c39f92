#pragma once

#include "core/storage/connection.h"

namespace coilbook::storage {

/// A compacted copy of everything at `destination`, which must not exist (AlreadyExists). A damaged
/// source is refused, and the copy is checked before it gets its name: it is whole, or it is not
/// there.
[[nodiscard]] Result<void> backUp(const Connection& source, const QString& destination);

/// A bare copy of the data at `destination`, which must not exist; neither checked nor flushed.
[[nodiscard]] Result<void> copyInto(const Connection& source, const QString& destination);

} // namespace coilbook::storage
