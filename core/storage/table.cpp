#include "core/storage/table.h"

namespace coilbook::storage {

QString columnList(const TableShape& shape, const QString& alias) {
    QString list;
    for (const QString& column : shape.columns) {
        list += alias + QLatin1Char('.') + column + QStringLiteral(", ");
    }
    return list + alias + QStringLiteral(".checksum");
}

QVariantList withChecksum(const TableShape& shape, QVariantList values) {
    const qint64 checksum = rowChecksum(shape.name, values);
    values.append(QVariant::fromValue<qlonglong>(checksum));
    return values;
}

Result<QVariantList> checkedValues(const TableShape& shape, const QSqlQuery& query,
                                   const QString& path) {
    const int columns = static_cast<int>(shape.columns.size());
    QVariantList values;
    values.reserve(columns);
    for (int i = 0; i < columns; ++i) {
        values.append(query.value(i));
    }
    if (query.value(columns).toLongLong() != rowChecksum(shape.name, values)) {
        const qsizetype id = shape.columns.indexOf(QStringLiteral("id"));
        return fail(StorageFault::Damaged,
                    {shape.name + QLatin1Char(' ') + values.at(id).toString()}, path);
    }
    return values;
}

} // namespace coilbook::storage
