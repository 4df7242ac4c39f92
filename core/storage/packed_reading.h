#pragma once

#include "core/domain/inspection.h"

#include <QString>
#include <QVariant>

namespace coilbook::storage {

/// A reading as an import has a million of: original, without a note, its author not known. It is
/// passed to the database as three values instead of eighteen, and taken apart there.
namespace PackedReading {

constexpr qsizetype kValues = 3;

[[nodiscard]] bool fits(const Reading& reading);

/// The ids of sitting, reading and spring in one string of bytes; all numbers in one; the checksum.
[[nodiscard]] QVariantList values(const Reading& reading);

/// The INSERT that takes them apart, with %1 for the tuples of placeholders.
[[nodiscard]] QString insertSql();

} // namespace PackedReading

} // namespace coilbook::storage
