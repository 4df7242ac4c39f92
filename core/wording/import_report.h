#pragma once

#include "core/exchange/import_report.h"

#include <QString>

namespace coilbook::wording {

/// What an import did, one plain sentence a line, without a line end behind the last.
[[nodiscard]] QString importReport(const ImportReport& report);

} // namespace coilbook::wording
