#pragma once

#include "core/domain/changes.h"
#include "core/support/result.h"

#include <QString>

#include <vector>

namespace coilbook::storage {

/// Changes as one text and back, so that they can wait outside of their logbook. Records stand in
/// it as the values of their columns, in the order that Rows<> has.
[[nodiscard]] QString textOf(const std::vector<Change>& changes);

/// StorageFault::Damaged if that is no text of changes that this program knows.
[[nodiscard]] Result<std::vector<Change>> changesFrom(const QString& text);

} // namespace coilbook::storage
