#pragma once

#include "core/storage/connection.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

/// A prepared INSERT of whole rows with their checksums; a row whose key is there already is left
/// alone.
class InsertStatement {
public:
    /// For `rows` rows at once with the first `columns` columns of the table; the others take their
    /// defaults.
    [[nodiscard]] static Result<InsertStatement> prepare(const Connection& connection,
                                                         const TableShape& shape, qsizetype columns,
                                                         qsizetype rows);

    /// Row by row the values of the columns, then the checksum.
    [[nodiscard]] Result<void> run(const QVariantList& values);

private:
    InsertStatement(const Connection& connection, QSqlQuery query, QStringList names);

    const Connection* m_connection;
    QSqlQuery m_query;
    QStringList m_names; ///< of the placeholders, in order
};

} // namespace coilbook::storage
