#pragma once

#include <QByteArray>
#include <QByteArrayView>
#include <QString>
#include <QVarLengthArray>
#include <QVariant>

namespace coilbook::storage {

/// The first 8 bytes, big-endian, of the SHA-256 over the canonical form of a row: the name of its
/// table, then each value in the order of the columns. NULL is `n`, a number `i`, its decimal
/// digits and `;`, a text `t`, its length in UTF-8 bytes, `:` and its bytes; the name of the table
/// stands as a text. It finds a changed value that leaves the b-tree in order, which PRAGMA
/// integrity_check does not.
[[nodiscard]] qint64 rowChecksum(const QString& table, const QVariantList& values);

/// The whole SHA-256 over that form, 32 bytes.
[[nodiscard]] QByteArray rowDigest(const QString& table, const QVariantList& values);

/// The checksum of a row with that digest.
[[nodiscard]] qint64 checksumOf(const QByteArray& digest);

/// The canonical form of a row, value by value.
class CanonicalRow {
public:
    explicit CanonicalRow(const QString& table) { addText(table); }

    void addNull() { m_bytes.append('n'); }

    void addNumber(qint64 number);
    void addText(const QString& text);
    void addUtf8(QByteArrayView text);

    [[nodiscard]] QByteArray digest() const; ///< SHA-256, 32 bytes

private:
    void appendDigits(qint64 number);

    /// Most rows fit, so that a million of them need no memory of their own.
    QVarLengthArray<char, 512> m_bytes;
};

} // namespace coilbook::storage
