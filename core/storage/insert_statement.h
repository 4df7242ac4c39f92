#pragma once

#include "core/storage/connection.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

/// A prepared INSERT of several rows with their checksums and seals; a row whose key is there
/// already is left alone.
class InsertStatement {
public:
    /// For whole rows of a table.
    [[nodiscard]] static Result<InsertStatement> prepare(const Connection& connection,
                                                         const TableShape& shape, qsizetype rows);

    /// For readings packed into few values (PackedReading::values()): each value that Qt passes on
    /// costs about as much time as SQLite needs to store it.
    [[nodiscard]] static Result<InsertStatement> preparePacked(const Connection& connection,
                                                               qsizetype rows);

    /// The values of all rows, row by row. Returns how many of the rows were not there before.
    [[nodiscard]] Result<qsizetype> run(const QVariantList& values);

private:
    InsertStatement(const Connection& connection, QSqlQuery query, QStringList names);

    /// `sql` has a %1 where the tuples of placeholders go.
    [[nodiscard]] static Result<InsertStatement> prepare(const Connection& connection,
                                                         const QString& sql, qsizetype valuesPerRow,
                                                         qsizetype rows);

    const Connection* m_connection;
    QSqlQuery m_query;
    QStringList m_names; ///< of the placeholders, in order
};

} // namespace coilbook::storage
