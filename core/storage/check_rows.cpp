#include "core/storage/checks.h"
#include "core/storage/reading_check.h"
#include "core/storage/seal_check.h"
#include "core/storage/table.h"

namespace coilbook::storage {

namespace {

/// Those of readings are checked row by row, which is faster.
Result<void> checkForeignKeys(const Connection& connection, const QString& table,
                              VerifyReport& report) {
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        report.add({FindingKind::NoSuchRow, table, {query.value(2).toString()}, {}});
        return {};
    };
    return connection.forEachRow(QStringLiteral("PRAGMA foreign_key_check(%1)").arg(table), {},
                                 onRow);
}

Result<void> checkTable(const Connection& connection, const TableShape& shape, SealCheck& seals,
                        VerifyReport& report) {
    const int checksum = static_cast<int>(shape.columns.size());
    const qsizetype id = shape.columns.indexOf(QStringLiteral("id"));
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        ++report.rowsChecked;
        const QVariantList values = rowValues(shape, query);
        const QByteArray digest = rowDigest(shape.name, values);
        const QString record = values.at(id).toString();
        const bool isIntact = query.value(checksum).toLongLong() == checksumOf(digest);
        if (!isIntact) {
            report.add({FindingKind::Checksum, shape.name + QLatin1Char(' ') + record, {}, {}});
        }
        seals.addRow(shape, record.toUtf8(), digest, query.value(checksum + 1).toLongLong(),
                     isIntact);
        return {};
    };
    return connection.forEachRow(
        QStringLiteral("SELECT %1, r.seal FROM %2 r ORDER BY %3")
            .arg(columnList(shape, QStringLiteral("r")), shape.name, shape.key),
        {}, onRow);
}

} // namespace

Result<void> checkRows(const Connection& connection, SealCheck& seals, QSet<QString>& suspects,
                       VerifyReport& report) {
    for (const TableShape* shape : dataTables()) {
        const bool isReading = shape == &Rows<Reading>::shape();
        Result<void> checked = isReading ? ReadingCheck(connection, seals, suspects, report).run()
                                         : checkTable(connection, *shape, seals, report);
        checked = keepDamage(checked, shape->name, report);
        if (!isReading) {
            checked = checked.and_then([&] {
                return keepDamage(checkForeignKeys(connection, shape->name, report), shape->name,
                                  report);
            });
        }
        if (!checked) {
            return checked;
        }
    }
    return keepDamage(checkForeignKeys(connection, QStringLiteral("draft"), report),
                      QStringLiteral("draft"), report);
}

} // namespace coilbook::storage
