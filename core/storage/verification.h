#pragma once

#include "core/domain/verify_report.h"
#include "core/storage/connection.h"

namespace coilbook::storage {

/// Goes through the whole file: pages, foreign keys, the checksum and the seal of every row, that
/// amendments lead back to their originals, and the rules of a logbook. Memory grows with the
/// number of seals over single rows (56 bytes each) and of sittings, not with that of readings.
/// Damage is a finding; an Error means that the check itself could not be made.
[[nodiscard]] Result<VerifyReport> verifyFile(const Connection& connection);

} // namespace coilbook::storage
