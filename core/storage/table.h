#pragma once

#include "core/storage/connection.h"
#include "core/storage/insert_statement.h"
#include "core/storage/row_checksum.h"
#include "core/storage/rows.h"
#include "core/storage/seals.h"

#include <optional>
#include <vector>

namespace coilbook::storage {

// The statements that all tables of data share. They are built from the shape of the table, so that
// a column is named in two places only: its migration and its Rows<>.

/// The columns, then the checksum, each with `alias.` in front.
[[nodiscard]] QString columnList(const TableShape& shape, const QString& alias);

/// All tables of data, in the one order in which they are sealed and checked.
[[nodiscard]] const std::vector<const TableShape*>& dataTables();

/// The values of a row with what follows them: the checksum by the row's digest, and the number of
/// the seal that covers it.
[[nodiscard]] QVariantList withSeal(QVariantList values, const QByteArray& digest, qint64 seal);

/// The values of a row whose columns stand in the order of columnList() from the first on, as they
/// are, without the checksum.
[[nodiscard]] QVariantList rowValues(const TableShape& shape, const QSqlQuery& query);

/// The same, StorageFault::Damaged if the checksum does not fit.
[[nodiscard]] Result<QVariantList> checkedValues(const TableShape& shape, const QSqlQuery& query,
                                                 const QString& path);

/// Stores and seals a record; one that is there already is left alone.
template <class Record>
[[nodiscard]] Result<void> insert(const Connection& connection, const Record& record) {
    return insertSealed(connection, Rows<Record>::shape(), Rows<Record>::values(record));
}

/// All records for `condition` (`WHERE r.… ORDER BY …`; the table is called r).
template <class Record>
[[nodiscard]] Result<std::vector<Record>>
select(const Connection& connection, const QString& condition, const QVariantList& values = {}) {
    const TableShape& shape = Rows<Record>::shape();
    const QString sql = QStringLiteral("SELECT %1 FROM %2 r %3")
                            .arg(columnList(shape, QStringLiteral("r")), shape.name, condition);
    std::vector<Record> records;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const Result<QVariantList> row = checkedValues(shape, query, connection.path());
        if (!row) {
            return tl::unexpected(row.error());
        }
        Result<Record> record = Rows<Record>::record(*row);
        if (!record) {
            return tl::unexpected(record.error());
        }
        records.push_back(std::move(*record));
        return {};
    };
    if (Result<void> read = connection.forEachRow(sql, values, onRow); !read) {
        return tl::unexpected(read.error());
    }
    return records;
}

/// The record with this id, if there is one.
template <class Record, class Tag>
[[nodiscard]] Result<std::optional<Record>> find(const Connection& connection, const Id<Tag>& id) {
    Result<std::vector<Record>> found =
        select<Record>(connection, QStringLiteral("WHERE r.id = ?"), {id.text()});
    if (!found) {
        return tl::unexpected(found.error());
    }
    return found->empty() ? std::nullopt : std::optional<Record>(std::move(found->front()));
}

} // namespace coilbook::storage
