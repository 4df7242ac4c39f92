#include "core/storage/schema.h"

#include "core/storage/row_checksum.h"
#include "core/storage/seals.h"
#include "core/storage/transaction.h"

namespace coilbook::storage {

namespace {

Result<int> number(const Connection& connection, const QString& sql) {
    return connection.scalar(sql).map([](const QVariant& value) { return value.toInt(); });
}

Result<void> tryToWrite(const Connection& connection) {
    const Result<Transaction> transaction = Transaction::write(connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    // BEGIN IMMEDIATE succeeds on a read-only file; the first write does not.
    return number(connection, QStringLiteral("PRAGMA user_version")).and_then([&](int version) {
        return connection.run(QStringLiteral("PRAGMA user_version=%1").arg(version));
    });
}

/// Gives the rows of a table that got columns a checksum over all of them. A row that did not match
/// its checksum before keeps it, so that damage stays visible.
Result<void> renewChecksums(const Connection& connection, const WidenedTable& table) {
    const QStringList columns = table.columns + table.added;
    const qsizetype before = table.columns.size();
    std::vector<QVariantList> updates; ///< checksum, id
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        QVariantList values;
        for (int i = 0; i < columns.size(); ++i) {
            values.append(query.value(i));
        }
        const qint64 stored = query.value(static_cast<int>(columns.size())).toLongLong();
        if (stored == rowChecksum(table.name, values.mid(0, before))) {
            updates.push_back({QVariant::fromValue<qlonglong>(rowChecksum(table.name, values)),
                               values.at(columns.indexOf(QStringLiteral("id")))});
        }
        return {};
    };
    const QString rows = QStringLiteral("SELECT %1, checksum FROM %2")
                             .arg(columns.join(QStringLiteral(", ")), table.name);
    Result<void> done = connection.forEachRow(rows, {}, onRow);
    for (const QVariantList& update : updates) {
        done = done.and_then([&] {
            return connection.run(
                QStringLiteral("UPDATE %1 SET checksum = ? WHERE id = ?").arg(table.name), update);
        });
    }
    return done;
}

Result<void> take(const Connection& connection, const Migration& migration) {
    for (const QString& statement : migration.statements) {
        if (Result<void> done = connection.run(statement); !done) {
            return done;
        }
    }
    for (const WidenedTable& table : migration.widened) {
        if (Result<void> done = renewChecksums(connection, table); !done) {
            return done;
        }
    }
    return {};
}

/// Rows that stood in another form before, or before there were seals, are sealed as they are now.
Result<void> sealFrom(const Connection& connection, int version) {
    const Result<int> sealed =
        number(connection, QStringLiteral("SELECT count(*) FROM sqlite_master"
                                          " WHERE type = 'table' AND name = 'seal'"));
    if (!sealed) {
        return tl::unexpected(sealed.error());
    }
    return *sealed == 0 ? Result<void>()
                        : sealAnew(connection,
                                   version == 0 ? SealBeginning::Created : SealBeginning::Migrated);
}

} // namespace

Result<void> setAndReadBack(const Connection& connection, const QString& pragma,
                            const QString& value, const QString& expected) {
    // The setting itself may answer with a row or with none, so it is asked for afterwards.
    const Result<QVariant> set =
        connection.scalar(QStringLiteral("PRAGMA %1=%2").arg(pragma, value));
    if (!set) {
        return tl::unexpected(set.error());
    }
    const Result<QVariant> answer = connection.scalar(QStringLiteral("PRAGMA %1").arg(pragma));
    if (!answer) {
        return tl::unexpected(answer.error());
    }
    if (answer->toString() != expected) {
        return fail(StorageFault::Internal, {pragma + QLatin1Char('=') + answer->toString()},
                    connection.path());
    }
    return {};
}

Result<FileIdentity> readIdentity(const Connection& connection) {
    const Result<int> id = number(connection, QStringLiteral("PRAGMA application_id"));
    const Result<int> version = id ? number(connection, QStringLiteral("PRAGMA user_version")) : id;
    const Result<int> tables =
        version ? number(connection, QStringLiteral("SELECT count(*) FROM sqlite_master"))
                : version;
    if (!tables) {
        return tl::unexpected(tables.error());
    }
    return FileIdentity{*id, *version, *tables == 0};
}

int newestVersion(const std::vector<Migration>& migrations) {
    return migrations.empty() ? 0 : migrations.back().version;
}

Result<void> checkIdentity(const FileIdentity& identity, const QString& path,
                           const std::vector<Migration>& migrations) {
    if (identity.empty || identity.applicationId != kApplicationId || identity.schemaVersion < 1) {
        return fail(StorageFault::NotALogbook, {}, path);
    }
    if (identity.schemaVersion > newestVersion(migrations)) {
        return fail(StorageFault::NewerVersion, {QString::number(identity.schemaVersion)}, path);
    }
    return {};
}

Result<void> prepareForReading(const Connection& connection) {
    return setAndReadBack(connection, QStringLiteral("foreign_keys"), QStringLiteral("ON"),
                          QStringLiteral("1"))
        .and_then([&] {
            return setAndReadBack(connection, QStringLiteral("trusted_schema"),
                                  QStringLiteral("OFF"), QStringLiteral("0"));
        })
        .and_then([&] {
            return setAndReadBack(connection, QStringLiteral("cell_size_check"),
                                  QStringLiteral("ON"), QStringLiteral("1"));
        });
}

Result<void> prepareForWriting(const Connection& connection) {
    return setAndReadBack(connection, QStringLiteral("journal_mode"), QStringLiteral("TRUNCATE"),
                          QStringLiteral("truncate"))
        .and_then([&] {
            return setAndReadBack(connection, QStringLiteral("synchronous"), QStringLiteral("FULL"),
                                  QStringLiteral("2"));
        })
        .and_then([&] {
            // Asks macOS to empty the drive's own cache; elsewhere without effect.
            return setAndReadBack(connection, QStringLiteral("fullfsync"), QStringLiteral("ON"),
                                  QStringLiteral("1"));
        })
        .and_then([&] { return prepareForReading(connection); })
        .and_then([&] { return tryToWrite(connection); });
}

Result<void> migrate(const Connection& connection, int from,
                     const std::vector<Migration>& migrations) {
    Result<Transaction> transaction = Transaction::write(connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    for (const Migration& migration : migrations) {
        if (migration.version <= from) {
            continue;
        }
        if (Result<void> done = take(connection, migration); !done) {
            return done;
        }
    }
    const int version = newestVersion(migrations);
    return sealFrom(connection, from)
        .and_then([&] {
            return connection.run(QStringLiteral("PRAGMA application_id=%1").arg(kApplicationId));
        })
        .and_then(
            [&] { return connection.run(QStringLiteral("PRAGMA user_version=%1").arg(version)); })
        .and_then([&] {
            return connection.run(
                QStringLiteral("INSERT INTO meta (key, value) VALUES ('schema_version', ?)"
                               " ON CONFLICT (key) DO UPDATE SET value = excluded.value"),
                {QString::number(version)});
        })
        .and_then([&] { return transaction->commit(); });
}

} // namespace coilbook::storage
