#include "core/storage/spool.h"

#include "core/storage/change_text.h"
#include "core/storage/row_checksum.h"
#include "core/storage/row_values.h"
#include "core/storage/schema.h"
#include "core/storage/transaction.h"

#include <QDir>
#include <QFileInfo>

namespace coilbook {

using storage::Connection;
using storage::stored;
using storage::Transaction;

namespace {

/// `COIW`: marks the file (PRAGMA application_id).
constexpr int kSpoolId = 0x434f4957;

/// A reading takes about a kilobyte here, with its share of the pages.
constexpr int kSpareRows = 64;
constexpr int kSpareRowBytes = 4000; // a page each

const QString kEntry = QStringLiteral("entry");

Result<void> makeTables(const Connection& connection) {
    Result<Transaction> transaction = Transaction::write(connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    const QStringList statements{
        QStringLiteral("CREATE TABLE IF NOT EXISTS entry (number INTEGER PRIMARY KEY AUTOINCREMENT,"
                       " logbook TEXT NOT NULL, changes TEXT NOT NULL, readings TEXT NOT NULL,"
                       " at_utc TEXT NOT NULL, at_offset_min INTEGER NOT NULL,"
                       " refused TEXT NOT NULL, checksum INTEGER NOT NULL) STRICT"),
        QStringLiteral("CREATE TABLE IF NOT EXISTS draft (logbook TEXT NOT NULL,"
                       " engine_id TEXT NOT NULL, inspection_id TEXT NOT NULL,"
                       " cylinder INTEGER NOT NULL, valve TEXT NOT NULL, typed TEXT NOT NULL,"
                       " PRIMARY KEY (logbook, engine_id)) STRICT"),
        QStringLiteral("CREATE TABLE IF NOT EXISTS spare (text TEXT NOT NULL) STRICT"),
        QStringLiteral("INSERT INTO spare WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL"
                       " SELECT i + 1 FROM n WHERE i < %1) SELECT hex(zeroblob(%2)) FROM n")
            .arg(QString::number(kSpareRows), QString::number(kSpareRowBytes / 2)),
        QStringLiteral("PRAGMA application_id=%1").arg(kSpoolId)};
    for (const QString& statement : statements) {
        if (Result<void> done = connection.run(statement); !done) {
            return done;
        }
    }
    return transaction->commit();
}

/// Writes all spare pages once more, which makes the journal large, then gives them free: they stay
/// with the file.
Result<void> makeRoom(const Connection& connection) {
    return connection.run(QStringLiteral("UPDATE spare SET text = lower(text) || 'x'"))
        .and_then([&] { return connection.run(QStringLiteral("DELETE FROM spare")); });
}

/// As a logbook is written, but the journal keeps its room on the disk.
Result<void> prepare(const Connection& connection) {
    return storage::setAndReadBack(connection, QStringLiteral("journal_mode"),
                                   QStringLiteral("PERSIST"), QStringLiteral("persist"))
        .and_then([&] {
            return storage::setAndReadBack(connection, QStringLiteral("synchronous"),
                                           QStringLiteral("FULL"), QStringLiteral("2"));
        })
        .and_then([&] {
            return storage::setAndReadBack(connection, QStringLiteral("fullfsync"),
                                           QStringLiteral("ON"), QStringLiteral("1"));
        })
        .and_then([&] { return storage::prepareForReading(connection); });
}

/// What the checksum of an entry is made over: all but its number and whether it was refused.
qint64 checksumOf(const QVariantList& values) {
    return storage::rowChecksum(kEntry, values);
}

/// What was being typed is what waits now; were it kept, it would be entered once more.
Result<void> clearTyped(const Connection& connection, const QString& logbook,
                        const std::vector<Change>& changes) {
    Result<void> done;
    for (const Change& change : changes) {
        const auto* record = std::get_if<RecordReadings>(&change);
        for (const Reading& reading :
             record != nullptr ? record->readings : std::vector<Reading>()) {
            done = done.and_then([&] {
                return connection.run(QStringLiteral("UPDATE draft SET typed = '' WHERE logbook = ?"
                                                     " AND cylinder = ? AND valve = ?"),
                                      {logbook, stored(reading.place.cylinder.number()),
                                       stored(reading.place.valve)});
            });
        }
    }
    return done;
}

} // namespace

Result<Spool> Spool::open(const QString& path) {
    if (!QDir().mkpath(QFileInfo(path).absolutePath())) {
        return fail(StorageFault::ReadOnly, {}, path);
    }
    Result<std::unique_ptr<Connection>> connection =
        Connection::open(path, Connection::Access::Create);
    if (!connection) {
        return tl::unexpected(connection.error());
    }
    const Result<storage::FileIdentity> identity = storage::readIdentity(**connection);
    if (!identity) {
        return tl::unexpected(identity.error());
    }
    if (!identity->empty && identity->applicationId != kSpoolId) {
        return fail(StorageFault::NotALogbook, {}, path);
    }
    Result<void> ready = prepare(**connection);
    if (identity->empty) {
        ready = ready.and_then([&] { return makeTables(**connection); }).and_then([&] {
            return makeRoom(**connection);
        });
    }
    if (!ready) {
        return tl::unexpected(ready.error());
    }
    return Spool(std::move(*connection));
}

Result<qint64> Spool::keep(const QString& logbook, const WaitingEntry& entry) {
    QVariantList values{stored(logbook), stored(storage::textOf(entry.changes)),
                        stored(entry.readings), stored(entry.at.utc),
                        stored(entry.at.utcOffsetMinutes)};
    values.append(QVariant::fromValue<qlonglong>(checksumOf(values)));
    Result<Transaction> transaction = Transaction::write(*m_connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    Result<void> cleared = clearTyped(*m_connection, logbook, entry.changes);
    if (!cleared) {
        return tl::unexpected(cleared.error());
    }
    Result<qint64> number =
        m_connection
            ->run(QStringLiteral(
                      "INSERT INTO entry (logbook, changes, readings, at_utc, at_offset_min,"
                      " checksum, refused) VALUES (?, ?, ?, ?, ?, ?, '')"),
                  values)
            .and_then(
                [&] { return m_connection->scalar(QStringLiteral("SELECT last_insert_rowid()")); })
            .map([](const QVariant& id) { return id.toLongLong(); });
    return number.and_then([&](qint64) { return transaction->commit(); }).map([&] {
        return *number;
    });
}

Result<std::vector<WaitingEntry>> Spool::entriesOf(const QString& logbook) const {
    std::vector<WaitingEntry> entries;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        QVariantList values;
        for (int i = 0; i < 5; ++i) {
            values.append(query.value(i));
        }
        if (query.value(5).toLongLong() != checksumOf(values)) {
            return fail(StorageFault::Damaged, {kEntry}, m_connection->path());
        }
        Result<std::vector<Change>> changes = storage::changesFrom(values.at(1).toString());
        if (!changes) {
            return tl::unexpected(changes.error());
        }
        entries.push_back({query.value(6).toLongLong(),
                           std::move(*changes),
                           values.at(2).toString(),
                           {values.at(3).toString(), values.at(4).toInt()},
                           query.value(7).toString()});
        return {};
    };
    const QString sql = QStringLiteral("SELECT logbook, changes, readings, at_utc, at_offset_min,"
                                       " checksum, number, refused FROM entry WHERE logbook = ?"
                                       " ORDER BY number");
    if (Result<void> read = m_connection->forEachRow(sql, {logbook}, onRow); !read) {
        return tl::unexpected(read.error());
    }
    return entries;
}

Result<void> Spool::forget(qint64 number) {
    return m_connection->run(QStringLiteral("DELETE FROM entry WHERE number = ?"), {number});
}

Result<void> Spool::markRefused(qint64 number, const QString& why) {
    return m_connection->run(QStringLiteral("UPDATE entry SET refused = ? WHERE number = ?"),
                             {why, number});
}

Result<void> Spool::keepDraft(const QString& logbook, const Draft& draft) {
    return m_connection->run(
        QStringLiteral("INSERT INTO draft (logbook, engine_id, inspection_id, cylinder, valve,"
                       " typed) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (logbook, engine_id) DO"
                       " UPDATE SET inspection_id = excluded.inspection_id,"
                       " cylinder = excluded.cylinder, valve = excluded.valve,"
                       " typed = excluded.typed"),
        {stored(logbook), stored(draft.engine), stored(draft.inspection),
         stored(draft.place.cylinder.number()), stored(draft.place.valve), stored(draft.typed)});
}

Result<std::optional<Draft>> Spool::draftOf(const QString& logbook, const EngineId& engine) const {
    std::optional<Draft> draft;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const QVariantList values{query.value(0), query.value(1), query.value(2), query.value(3)};
        storage::RowReader row(values);
        draft.emplace();
        draft->engine = engine;
        draft->inspection = row.id<InspectionId>();
        draft->place = row.place();
        draft->typed = row.text();
        return {};
    };
    const QString sql = QStringLiteral("SELECT inspection_id, cylinder, valve, typed FROM draft"
                                       " WHERE logbook = ? AND engine_id = ?");
    if (Result<void> read = m_connection->forEachRow(sql, {logbook, engine.text()}, onRow); !read) {
        return tl::unexpected(read.error());
    }
    return draft;
}

Result<void> Spool::forgetDraft(const QString& logbook, const EngineId& engine) {
    return m_connection->run(
        QStringLiteral("DELETE FROM draft WHERE logbook = ? AND engine_id = ?"),
        {logbook, engine.text()});
}

} // namespace coilbook
