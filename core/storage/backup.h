#pragma once

#include "core/storage/connection.h"

namespace coilbook::storage {

/// A compacted copy of everything at `destination`, which must not exist (AlreadyExists). A damaged
/// source is refused, and the copy is checked before it gets its name: it is whole, or it is not
/// there.
[[nodiscard]] Result<void> backUp(const Connection& source, const QString& destination);

/// A bare copy of the data at `destination`, which must not exist; neither checked nor flushed.
[[nodiscard]] Result<void> copyInto(const Connection& source, const QString& destination);

/// A copy of a logbook of an older version as it is, beside it, before it is brought up to date:
/// `NAME.version-N.coilbook`. One that is there already stays. Damaged if the file is.
[[nodiscard]] Result<void> keepOlderVersion(const Connection& older, int version);

} // namespace coilbook::storage
