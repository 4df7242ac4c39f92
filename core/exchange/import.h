#pragma once

#include "core/exchange/exchange_parser.h"
#include "core/exchange/import_report.h"
#include "core/storage/logbook_store.h"
#include "core/support/clock.h"
#include "core/support/result.h"

#include <QStringList>

#include <functional>

namespace coilbook {

/// Told what an import is about to commit; a failure keeps it from doing so and is handed on.
using ImportConfirmation = std::function<Result<void>(const ImportReport&)>;

/// Reads exchange files of either kind into a logbook: all of them or nothing. Rows that are stored
/// already change nothing; the order of files and rows does not matter, but for hits without a
/// number. Of several faults the first by file, line and column is returned, with the number of
/// others. `progress` may stop it (InputFault::Cancelled) until the last row is written.
[[nodiscard]] Result<ImportReport> importFiles(LogbookStore& store, const QStringList& paths,
                                               const Clock& clock, const Progress& progress = {},
                                               const ImportConfirmation& confirm = {});

} // namespace coilbook
