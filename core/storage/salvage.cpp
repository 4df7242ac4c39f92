#include "core/storage/salvage.h"

#include "core/storage/row_checksum.h"
#include "core/storage/schema.h"
#include "core/storage/seals.h"
#include "core/storage/transaction.h"

#include <algorithm>
#include <iterator>

namespace coilbook {

using storage::Connection;
using storage::Transaction;

namespace {

const QString kChecksum = QStringLiteral("checksum");

struct Table {
    QString name;
    QStringList columns; ///< without the checksum, in the order that the checksum has
    QStringList key;
    bool hasChecksum = false;
    bool hasRowId = true;

    /// What stands in these tables is said by somebody; a changed row of them is worth nothing.
    [[nodiscard]] bool holdsStatements() const {
        return name == QLatin1String("reading") || name == QLatin1String("decision") ||
               name == QLatin1String("amendment");
    }
};

/// The tables of a sound logbook in the order in which they may be filled.
Result<std::vector<Table>> tablesOf(const Connection& connection) {
    std::vector<Table> tables;
    const auto onTable = [&](const QSqlQuery& query) -> Result<void> {
        const QString sql = query.value(1).toString();
        tables.push_back({query.value(0).toString(),
                          {},
                          {},
                          false,
                          !sql.contains(QLatin1String("WITHOUT ROWID"))});
        return {};
    };
    const QString sql = QStringLiteral("SELECT name, sql FROM sqlite_master WHERE type = 'table'"
                                       " AND name NOT LIKE 'sqlite_%'"
                                       " AND name NOT IN ('meta', 'seal')"
                                       " ORDER BY rowid");
    Result<void> read = connection.forEachRow(sql, {}, onTable);
    for (Table& table : tables) {
        const auto onColumn = [&](const QSqlQuery& query) -> Result<void> {
            const QString name = query.value(1).toString();
            if (name == kChecksum) {
                table.hasChecksum = true;
            } else if (name != QLatin1String("seal")) {
                table.columns.append(name); // a copy has seals of its own
            }
            if (query.value(5).toInt() > 0) {
                table.key.append(name);
            }
            return {};
        };
        read = read.and_then([&] {
            return connection.forEachRow(QStringLiteral("PRAGMA table_info(%1)").arg(table.name),
                                         {}, onColumn);
        });
    }
    if (!read) {
        return tl::unexpected(read.error());
    }
    // A table made anew by a migration stands behind those that refer to it or by it; what it
    // refers to has names of its own, so amendments and drafts come last.
    std::stable_partition(tables.begin(), tables.end(), [](const Table& table) {
        return table.name != QLatin1String("amendment") && table.name != QLatin1String("draft");
    });
    return tables;
}

/// Carries the rows of one table over.
class TableCopy {
public:
    TableCopy(const Connection& from, const Connection& to, const Table& table, Salvaged& report)
        : m_from(from)
        , m_to(to)
        , m_table(table)
        , m_report(report) {}

    Result<void> run() {
        const QString columns = m_table.columns.join(QStringLiteral(", ")) +
                                (m_table.hasChecksum ? QStringLiteral(", checksum") : QString());
        const QString forward =
            QStringLiteral("SELECT %1 FROM %2 NOT INDEXED").arg(columns, m_table.name);
        if (readAll(forward)) {
            return {};
        }
        // From the other end, up to what cannot be read either.
        m_report.hasGaps = true;
        const QStringList keys =
            m_table.hasRowId ? QStringList{QStringLiteral("rowid")} : m_table.key;
        QStringList order;
        std::transform(keys.begin(), keys.end(), std::back_inserter(order),
                       [](const QString& key) { return key + QStringLiteral(" DESC"); });
        readAll(forward + QStringLiteral(" ORDER BY ") + order.join(QStringLiteral(", ")));
        return m_failure;
    }

private:
    /// Whether it came to the end.
    bool readAll(const QString& sql) {
        const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
            QVariantList values;
            for (int i = 0; i < m_table.columns.size(); ++i) {
                values.append(query.value(i));
            }
            const int last = static_cast<int>(m_table.columns.size());
            const qint64 made = storage::rowChecksum(m_table.name, values);
            const bool fits = !m_table.hasChecksum || query.value(last).toLongLong() == made;
            put(values, made, fits);
            return m_failure;
        };
        return m_from.forEachRow(sql, {}, onRow).has_value();
    }

    void put(QVariantList values, qint64 checksum, bool fits) {
        if (!fits && m_table.holdsStatements()) {
            ++m_report.left;
            return;
        }
        QStringList columns = m_table.columns;
        if (m_table.hasChecksum) {
            columns.append(kChecksum);
            values.append(QVariant::fromValue<qlonglong>(checksum));
        }
        const QStringList marks(columns.size(), QStringLiteral("?"));
        const QString sql =
            QStringLiteral("INSERT INTO %1 (%2) VALUES (%3) ON CONFLICT (%4) DO NOTHING")
                .arg(m_table.name, columns.join(QStringLiteral(", ")),
                     marks.join(QStringLiteral(", ")), m_table.key.join(QStringLiteral(", ")));
        const Result<void> done = m_to.run(sql, values);
        if (done) {
            m_report.altered += fits ? 0 : 1;
            return;
        }
        // A rule of the schema, or the row that this one belongs to is not there.
        if (done.error().fault == decltype(Error::fault)(StorageFault::Conflict)) {
            ++m_report.left;
        } else {
            m_failure = done; // the passing folder is full, say
        }
    }

    const Connection& m_from;
    const Connection& m_to;
    const Table& m_table;
    Salvaged& m_report;
    Result<void> m_failure;
};

/// The steps that lead to the version that the damaged logbook has.
std::vector<storage::Migration> stepsUpTo(int version) {
    std::vector<storage::Migration> steps;
    const std::vector<storage::Migration>& all = storage::sqliteMigrations();
    std::copy_if(
        all.begin(), all.end(), std::back_inserter(steps),
        [version](const storage::Migration& migration) { return migration.version <= version; });
    return steps;
}

Result<void> carryOver(const Connection& from, const Connection& to, Salvaged& report) {
    const Result<std::vector<Table>> tables = tablesOf(to);
    Result<Transaction> transaction = Transaction::write(to);
    if (!tables || !transaction) {
        return tl::unexpected(tables ? transaction.error() : tables.error());
    }
    for (const Table& table : *tables) {
        if (Result<void> copied = TableCopy(from, to, table, report).run(); !copied) {
            return copied;
        }
    }
    return transaction->commit();
}

/// Brings the copy up to date, which seals it, or seals it as it is.
Result<void> finish(const Connection& copy, int version) {
    if (version < storage::newestVersion(storage::sqliteMigrations())) {
        return storage::migrate(copy, version, storage::sqliteMigrations());
    }
    Result<Transaction> transaction = Transaction::write(copy);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    return storage::sealAnew(copy, SealBeginning::Restored).and_then([&] {
        return transaction->commit();
    });
}

} // namespace

Result<Salvaged> salvage(const QString& path) {
    const Result<std::unique_ptr<Connection>> from =
        Connection::open(path, Connection::Access::ReadOnly);
    if (!from) {
        return tl::unexpected(from.error());
    }
    const Result<storage::FileIdentity> identity = storage::readIdentity(**from);
    if (!identity) {
        return tl::unexpected(identity.error());
    }
    if (Result<void> ours = storage::checkIdentity(*identity, path, storage::sqliteMigrations());
        !ours) {
        return tl::unexpected(ours.error());
    }
    Salvaged result;
    result.folder = std::make_shared<QTemporaryDir>();
    result.path = result.folder->filePath(QStringLiteral("readable.coilbook"));
    const Result<std::unique_ptr<Connection>> to =
        Connection::open(result.path, Connection::Access::Create);
    if (!to) {
        return tl::unexpected(to.error());
    }
    const int version = identity->schemaVersion;
    Result<void> made =
        storage::prepareForWriting(**to)
            .and_then([&] { return storage::migrate(**to, 0, stepsUpTo(version)); })
            .and_then([&] { return carryOver(**from, **to, result); })
            .and_then([&] { return finish(**to, version); })
            .and_then([&] { return (*to)->run(QStringLiteral("PRAGMA journal_mode=DELETE")); });
    if (!made) {
        return tl::unexpected(made.error());
    }
    return result;
}

} // namespace coilbook
