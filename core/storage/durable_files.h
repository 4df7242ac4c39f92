#pragma once

#include "core/support/result.h"

#include <QString>

namespace coilbook::storage {

/// A name beside `path` that nobody has, for a file until it is finished.
[[nodiscard]] QString unfinishedName(const QString& path);

/// Gives a finished file its name and returns when file and name are on the disk. `to` must not
/// exist. InputOutput or AlreadyExists on failure; `from` is then still there.
[[nodiscard]] Result<void> moveDurably(const QString& from, const QString& to);

} // namespace coilbook::storage
