#include "core/storage/table.h"

namespace coilbook::storage {

QString columnList(const TableShape& shape, const QString& alias) {
    QString list;
    for (const QString& column : shape.columns) {
        list += alias + QLatin1Char('.') + column + QStringLiteral(", ");
    }
    return list + alias + QStringLiteral(".checksum");
}

const std::vector<const TableShape*>& dataTables() {
    static const std::vector<const TableShape*> tables{
        &Rows<Engine>::shape(),      &Rows<Tester>::shape(),
        &Rows<Spring>::shape(),      &Rows<Race>::shape(),
        &Rows<Inspection>::shape(),  &Rows<Sitting>::shape(),
        &Rows<Fitting>::shape(),     &Rows<Reading>::shape(),
        &Rows<Running>::shape(),     &Rows<LevelChange>::shape(),
        &Rows<PlannedRace>::shape(), &Rows<Shelving>::shape(),
        &Rows<Decision>::shape(),    &Rows<Amendment>::shape(),
        &Rows<Calibration>::shape(), &Rows<RepeatabilityStudy>::shape()};
    return tables;
}

QVariantList withSeal(QVariantList values, const QByteArray& digest, qint64 seal) {
    values.append(QVariant::fromValue<qlonglong>(checksumOf(digest)));
    values.append(QVariant::fromValue<qlonglong>(seal));
    return values;
}

QVariantList rowValues(const TableShape& shape, const QSqlQuery& query) {
    const int columns = static_cast<int>(shape.columns.size());
    QVariantList values;
    values.reserve(columns);
    for (int i = 0; i < columns; ++i) {
        values.append(query.value(i));
    }
    return values;
}

Result<QVariantList> checkedValues(const TableShape& shape, const QSqlQuery& query,
                                   const QString& path) {
    QVariantList values = rowValues(shape, query);
    if (query.value(static_cast<int>(shape.columns.size())).toLongLong() !=
        rowChecksum(shape.name, values)) {
        const qsizetype id = shape.columns.indexOf(QStringLiteral("id"));
        return fail(StorageFault::Damaged,
                    {shape.name + QLatin1Char(' ') + values.at(id).toString()}, path);
    }
    return values;
}

} // namespace coilbook::storage
