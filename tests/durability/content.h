#pragma once

#include "core/storage/logbook_store.h"

#include <QByteArray>

namespace coilbook::testing {

/// Everything that a logbook holds as `logbook.json` has it, but with the ids replaced by numbers
/// in order of appearance: the same for two logbooks that were filled in the same way.
[[nodiscard]] Result<QByteArray> contentOf(const LogbookStore& store);

} // namespace coilbook::testing
