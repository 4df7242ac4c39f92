#include "core/storage/row_checksum.h"

#include <QCryptographicHash>
#include <QVarLengthArray>
#include <QtEndian>

#include <algorithm>
#include <array>
#include <charconv>

namespace coilbook::storage {

namespace {

/// Most rows fit, so that a million of them need no memory of their own.
using Canonical = QVarLengthArray<char, 512>;

void appendNumber(Canonical& canonical, qint64 number) {
    std::array<char, 20> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number);
    canonical.append(digits.data(), end.ptr - digits.data());
}

void appendText(Canonical& canonical, const QString& text) {
    canonical.append('t');
    const bool ascii = std::all_of(text.begin(), text.end(),
                                   [](QChar character) { return character.unicode() < 0x80; });
    // Nearly all text of a logbook is ASCII and needs no conversion.
    const QByteArray utf8 = ascii ? QByteArray() : text.toUtf8();
    appendNumber(canonical, ascii ? text.size() : utf8.size());
    canonical.append(':');
    if (!ascii) {
        canonical.append(utf8.constData(), utf8.size());
        return;
    }
    const qsizetype before = canonical.size();
    canonical.resize(before + text.size());
    std::transform(text.begin(), text.end(), canonical.begin() + before,
                   [](QChar character) { return static_cast<char>(character.unicode()); });
}

void append(Canonical& canonical, const QVariant& value) {
    if (value.isNull()) {
        canonical.append('n');
    } else if (value.userType() == QMetaType::QString) {
        appendText(canonical, *static_cast<const QString*>(value.constData()));
    } else {
        canonical.append('i');
        appendNumber(canonical, value.toLongLong());
        canonical.append(';');
    }
}

} // namespace

qint64 rowChecksum(const QString& table, const QVariantList& values) {
    Canonical canonical;
    appendText(canonical, table);
    for (const QVariant& value : values) {
        append(canonical, value);
    }
    const QByteArray digest = QCryptographicHash::hash(
        QByteArrayView(canonical.constData(), canonical.size()), QCryptographicHash::Sha256);
    return qFromBigEndian<qint64>(digest.constData());
}

} // namespace coilbook::storage
