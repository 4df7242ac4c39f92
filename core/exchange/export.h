#pragma once

#include "core/storage/logbook_store.h"
#include "core/support/result.h"

#include <QString>

namespace coilbook {

/// Writes `races.csv`, `readings.csv` and `logbook.json` into a folder, which is made if it is not
/// there. Files of these names are replaced; on failure (CannotWriteOutput and what the store says)
/// they stay as they were. One engine at a time is in memory.
///
/// The CSV files hold the observations in their present form: each hit that was not withdrawn, with
/// the digits that should have been written where a slip of the pen was amended, under the present
/// dates and labels. So a logbook made from them counts what this one counts, and this one knows
/// every row of them. Amendments and what they replaced are in `logbook.json`.
[[nodiscard]] Result<void> exportLogbook(const LogbookStore& store, const QString& folder);

} // namespace coilbook
