#pragma once

#include "core/exchange/exchange_parser.h"
#include "core/exchange/import_plan.h"
#include "core/storage/logbook_store.h"
#include "core/support/result.h"

#include <functional>
#include <vector>

namespace coilbook {

/// Puts what an import planned into the logbook, in one transaction; nothing at all if there is
/// nothing new. Records are written in an order that does not depend on the order of rows. Notes
/// the engines made in the plans' reports. `confirm` is asked before the transaction is committed.
[[nodiscard]] Result<void> writePlans(LogbookStore& store, const ExchangeInput& input,
                                      std::vector<ImportPlan>& plans, const Progress& progress,
                                      const std::function<Result<void>()>& confirm);

} // namespace coilbook
