#pragma once

#include "core/support/error.h"

#include <QSqlError>

namespace coilbook::storage {

/// What a failed statement means to the logbook at `path`. A file that cannot be opened is told
/// apart by looking at the path (never by opening it: closing it would drop SQLite's locks).
[[nodiscard]] Error errorFrom(const QSqlError& error, const QString& path);

} // namespace coilbook::storage
