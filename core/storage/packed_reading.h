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

/// The numbers of a reading, each by itself.
struct Numbers {
    int cylinder = 0;
    bool retest = false;
    int decimals = 0;
    int hit = 0;
    qint64 digits = 0;
};

/// All readings in the order of their key, each as: ids of sitting, reading and spring, letter of
/// the valve and unit in one string of bytes; all numbers in one; checksum; seal. Where a reading
/// does not fit, the first is NULL. The bounds of the columns (CHECK) are what keeps the numbers
/// apart.
[[nodiscard]] QString selectSql();

/// The condition for a reading `r` that fits, as fits() has it.
[[nodiscard]] QString fitsSql();

[[nodiscard]] Numbers unpacked(qint64 numbers);

/// Digest of the row by its two values of selectSql().
[[nodiscard]] QByteArray digestOf(QByteArrayView texts, const Numbers& numbers);

/// The INSERT that takes them apart, with %1 for the tuples of placeholders.
[[nodiscard]] QString insertSql();

} // namespace PackedReading

} // namespace coilbook::storage
