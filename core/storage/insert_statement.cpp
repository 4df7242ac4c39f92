#include "core/storage/insert_statement.h"

#include "core/storage/packed_reading.h"

namespace coilbook::storage {

InsertStatement::InsertStatement(const Connection& connection, QSqlQuery query, QStringList names)
    : m_connection(&connection)
    , m_query(std::move(query))
    , m_names(std::move(names)) {}

Result<InsertStatement> InsertStatement::prepare(const Connection& connection,
                                                 const TableShape& shape, qsizetype rows) {
    const QString sql =
        QStringLiteral("INSERT INTO %2 (%3, checksum, seal) VALUES %1 ON CONFLICT (%4) DO NOTHING")
            .arg(QStringLiteral("%1"), shape.name, shape.columns.join(QStringLiteral(", ")),
                 shape.key);
    return prepare(connection, sql, shape.columns.size() + 2, rows);
}

Result<InsertStatement> InsertStatement::preparePacked(const Connection& connection,
                                                       qsizetype rows) {
    return prepare(connection, PackedReading::insertSql(), PackedReading::kValues, rows);
}

Result<InsertStatement> InsertStatement::prepare(const Connection& connection, const QString& sql,
                                                 qsizetype valuesPerRow, qsizetype rows) {
    // Names, because Qt 6.4 looks through all positions before it for each value bound by position.
    QStringList names;
    QStringList tuples;
    for (qsizetype row = 0; row < rows; ++row) {
        const qsizetype first = names.size();
        for (qsizetype column = 0; column < valuesPerRow; ++column) {
            names.append(QStringLiteral(":v%1").arg(names.size()));
        }
        tuples.append(QLatin1Char('(') + names.mid(first).join(QLatin1Char(',')) +
                      QLatin1Char(')'));
    }
    return connection.prepare(sql.arg(tuples.join(QLatin1Char(',')))).map([&](QSqlQuery query) {
        return InsertStatement(connection, std::move(query), std::move(names));
    });
}

Result<qsizetype> InsertStatement::run(const QVariantList& values) {
    Q_ASSERT(values.size() == m_names.size());
    for (qsizetype i = 0; i < values.size(); ++i) {
        m_query.bindValue(m_names.at(i), values.at(i));
    }
    return m_connection->execute(m_query).map(
        [&] { return static_cast<qsizetype>(m_query.numRowsAffected()); });
}

} // namespace coilbook::storage
