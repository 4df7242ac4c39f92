#include "core/storage/row_checksum.h"

#include <QCryptographicHash>
#include <QtEndian>

namespace coilbook::storage {

namespace {

void append(QByteArray& canonical, const QVariant& value) {
    if (value.isNull()) {
        canonical += 'n';
    } else if (value.userType() == QMetaType::QString) {
        const QByteArray utf8 = value.toString().toUtf8();
        canonical += 't';
        canonical += QByteArray::number(utf8.size());
        canonical += ':';
        canonical += utf8;
    } else {
        canonical += 'i';
        canonical += QByteArray::number(value.toLongLong());
    }
    canonical += ';';
}

} // namespace

qint64 rowChecksum(const QString& table, const QVariantList& values) {
    QByteArray canonical;
    canonical.reserve(256);
    canonical += table.toUtf8();
    canonical += ';';
    for (const QVariant& value : values) {
        append(canonical, value);
    }
    const QByteArray digest = QCryptographicHash::hash(canonical, QCryptographicHash::Sha256);
    return qFromBigEndian<qint64>(digest.constData());
}

} // namespace coilbook::storage
