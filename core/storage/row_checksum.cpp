#include "core/storage/row_checksum.h"

#include <QCryptographicHash>
#include <QtEndian>

#include <algorithm>
#include <array>
#include <charconv>

namespace coilbook::storage {

void CanonicalRow::appendDigits(qint64 number) {
    std::array<char, 20> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number);
    m_bytes.append(digits.data(), end.ptr - digits.data());
}

void CanonicalRow::addNumber(qint64 number) {
    m_bytes.append('i');
    appendDigits(number);
    m_bytes.append(';');
}

void CanonicalRow::addText(const QString& text) {
    const bool ascii = std::all_of(text.begin(), text.end(),
                                   [](QChar character) { return character.unicode() < 0x80; });
    if (!ascii) {
        addUtf8(text.toUtf8());
        return;
    }
    // Nearly all text of a logbook is ASCII and needs no conversion.
    m_bytes.append('t');
    appendDigits(text.size());
    m_bytes.append(':');
    const qsizetype before = m_bytes.size();
    m_bytes.resize(before + text.size());
    std::transform(text.begin(), text.end(), m_bytes.begin() + before,
                   [](QChar character) { return static_cast<char>(character.unicode()); });
}

void CanonicalRow::addUtf8(QByteArrayView text) {
    m_bytes.append('t');
    appendDigits(text.size());
    m_bytes.append(':');
    m_bytes.append(text.data(), text.size());
}

QByteArray CanonicalRow::digest() const {
    return QCryptographicHash::hash(QByteArrayView(m_bytes.constData(), m_bytes.size()),
                                    QCryptographicHash::Sha256);
}

qint64 checksumOf(const QByteArray& digest) {
    return qFromBigEndian<qint64>(digest.constData());
}

qint64 rowChecksum(const QString& table, const QVariantList& values) {
    return checksumOf(rowDigest(table, values));
}

QByteArray rowDigest(const QString& table, const QVariantList& values) {
    CanonicalRow row(table);
    for (const QVariant& value : values) {
        if (value.isNull()) {
            row.addNull();
        } else if (value.userType() == QMetaType::QString) {
            row.addText(*static_cast<const QString*>(value.constData()));
        } else {
            row.addNumber(value.toLongLong());
        }
    }
    return row.digest();
}

} // namespace coilbook::storage
