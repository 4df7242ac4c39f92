#pragma once

#include "core/exchange/exchange_rows.h"
#include "core/exchange/fault_log.h"
#include "core/support/clock.h"

#include <functional>

namespace coilbook {

/// Told how much of the work is done, 0 to 1; false stops it.
using Progress = std::function<bool(double)>;

/// Reads all files of an import into rows. Everything wrong with them goes to `faults`; rows at
/// fault are left out. False if `progress` stopped it.
[[nodiscard]] bool readExchangeFiles(const QStringList& paths, const Clock& clock,
                                     const Progress& progress, ExchangeInput& input,
                                     FaultLog& faults);

} // namespace coilbook
