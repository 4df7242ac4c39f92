#include "core/storage/table.h"

namespace coilbook::storage {

namespace {

QString placeholders(qsizetype count) {
    QStringList marks;
    marks.reserve(count);
    for (qsizetype i = 0; i < count; ++i) {
        marks.append(QStringLiteral("?"));
    }
    return QLatin1Char('(') + marks.join(QLatin1Char(',')) + QLatin1Char(')');
}

} // namespace

QString insertSql(const TableShape& shape, int rows) {
    const QString row = placeholders(shape.columns.size() + 1);
    QStringList all;
    all.reserve(rows);
    for (int i = 0; i < rows; ++i) {
        all.append(row);
    }
    return QStringLiteral("INSERT INTO %1 (%2, checksum) VALUES %3 ON CONFLICT (%4) DO NOTHING")
        .arg(shape.name, shape.columns.join(QStringLiteral(", ")), all.join(QLatin1Char(',')),
             shape.key);
}

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
