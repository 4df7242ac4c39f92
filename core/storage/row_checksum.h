#pragma once

#include <QString>
#include <QVariant>

namespace coilbook::storage {

/// The first 8 bytes, big-endian, of the SHA-256 over the canonical form of a row: the name of its
/// table, then each value in the order of the columns as `n` (NULL), `i` and the decimal number, or
/// `t`, the length in UTF-8 bytes, `:` and the text; each followed by `;`. It finds a changed value
/// that leaves the b-tree in order, which PRAGMA integrity_check does not.
[[nodiscard]] qint64 rowChecksum(const QString& table, const QVariantList& values);

} // namespace coilbook::storage
