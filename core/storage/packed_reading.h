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

/// Digest of the row, as rowDigest() of Rows<Reading>::values() would have it.
[[nodiscard]] QByteArray digestOf(const Reading& reading);

/// The ids of sitting, reading and spring and the number of the seal in one string of bytes; all
/// numbers of the reading in one; the checksum.
[[nodiscard]] QVariantList values(const Reading& reading, const QByteArray& digest, qint64 seal);

/// The INSERT that takes them apart, with %1 for the tuples of placeholders.
[[nodiscard]] QString insertSql();

} // namespace PackedReading

} // namespace coilbook::storage
