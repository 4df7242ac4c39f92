#pragma once

#include "core/storage/connection.h"
#include "core/storage/logbook_store.h"

namespace coilbook::storage {

/// Goes through the whole file: pages, foreign keys, the checksum of every row, and that
/// amendments lead back to their originals. Memory does not grow with the file. Damage is a
/// finding; an Error means that the check itself could not be made.
[[nodiscard]] Result<VerifyReport> verifyFile(const Connection& connection);

} // namespace coilbook::storage
