#include "core/storage/import_batch.h"

#include "core/storage/packed_reading.h"
#include "core/storage/schema.h"

#include <algorithm>
#include <utility>

namespace coilbook::storage {

namespace {

/// Rows of one INSERT.
constexpr std::ptrdiff_t kRowsPerStatement = 50;
/// Readings of one block; its values fit the cache of a processor.
constexpr std::size_t kBlock = SealBlocks::kMostRows;

/// In KiB, with PRAGMA cache_size's sign: 64 MiB while importing, SQLite's own size otherwise.
constexpr int kImportCache = -65536;
constexpr int kUsualCache = -2000;

/// Off while a batch is written, which checks its references itself: foreign keys would look up
/// sitting and spring of every reading, a quarter of the time of an import.
Result<void> setForeignKeys(const Connection& connection, bool on) {
    return setAndReadBack(connection, QStringLiteral("foreign_keys"),
                          on ? QStringLiteral("ON") : QStringLiteral("OFF"),
                          on ? QStringLiteral("1") : QStringLiteral("0"));
}

Result<void> setCache(const Connection& connection, int size) {
    return connection.run(QStringLiteral("PRAGMA cache_size=%1").arg(size));
}

} // namespace

ImportBatch::ImportBatch(const Connection& connection)
    : m_connection(connection) {
    m_gathered.reserve(kBlock);
}

ImportBatch::~ImportBatch() {
    m_prepared.clear();
    m_transaction.reset(); // foreign keys can be switched outside a transaction only
    [[maybe_unused]] const Result<void> done = setForeignKeys(m_connection, true).and_then([&] {
        return setCache(m_connection, kUsualCache);
    });
}

Result<std::unique_ptr<LogbookStore::Batch>> ImportBatch::begin(const Connection& connection) {
    std::unique_ptr<ImportBatch> batch(new ImportBatch(connection));
    return setForeignKeys(connection, false)
        .and_then([&] { return setCache(connection, kImportCache); })
        .and_then([&] { return Transaction::write(connection); })
        .and_then([&](Transaction transaction) {
            batch->m_transaction.emplace(std::move(transaction));
            return chainEnd(connection);
        })
        .map([&](ChainEnd end) -> std::unique_ptr<LogbookStore::Batch> {
            batch->m_seals = SealBlocks(std::move(end));
            return std::move(batch);
        });
}

Result<void> ImportBatch::add(const Reading& reading) {
    if (Result<void> checked = checkReferences(reading); !checked) {
        return checked;
    }
    m_gathered.push_back(reading);
    if (m_gathered.size() < kBlock) {
        return {};
    }
    return passOn();
}

Result<void> ImportBatch::checkReferences(const Reading& reading) {
    // What it amends is looked for by checkForeignKeys().
    if (reading.amends) {
        m_written.insert(Rows<Reading>::shape().name);
    }
    for (const auto& [table, id, latest] :
         {std::tuple(&Rows<Sitting>::shape().name, reading.sitting.uuid(), &m_latestSitting),
          std::tuple(&Rows<Spring>::shape().name, reading.spring.uuid(), &m_latestSpring)}) {
        if (*latest == id || m_there.contains(id)) {
            *latest = id;
            continue;
        }
        const Result<QVariant> found =
            m_connection.scalar(QStringLiteral("SELECT 1 FROM %1 WHERE id = ?").arg(*table),
                                {id.toString(QUuid::WithoutBraces)});
        if (!found) {
            return tl::unexpected(found.error());
        }
        if (!found->isValid()) {
            return fail(StorageFault::Conflict, {*table}, m_connection.path());
        }
        m_there.insert(id);
        *latest = id;
    }
    return {};
}

ImportBatch::ReadingBlock ImportBatch::blockOf(const std::vector<Reading>& readings, qint64 seal) {
    const TableShape& shape = Rows<Reading>::shape();
    ReadingBlock block;
    block.seal = seal;
    block.rows.reserve(readings.size());
    for (auto first = readings.begin(); first != readings.end();) {
        const auto end =
            first + std::min<std::ptrdiff_t>(kRowsPerStatement, readings.end() - first);
        Portion portion;
        portion.packed = std::all_of(first, end, PackedReading::fits);
        portion.rows = end - first;
        portion.values.reserve(
            portion.rows * (portion.packed ? PackedReading::kValues : shape.columns.size() + 2));
        for (; first != end; ++first) {
            const QVariantList values =
                portion.packed ? QVariantList() : Rows<Reading>::values(*first);
            QByteArray digest =
                portion.packed ? PackedReading::digestOf(*first) : rowDigest(shape.name, values);
            portion.values.append(portion.packed ? PackedReading::values(*first, digest, seal)
                                                 : withSeal(values, digest, seal));
            block.rows.push_back({first->sitting.uuid().toByteArray(QUuid::WithoutBraces) +
                                      first->id.uuid().toByteArray(QUuid::WithoutBraces),
                                  std::move(digest)});
        }
        block.portions.push_back(std::move(portion));
    }
    block.content = contentOf(block.rows);
    return block;
}

Result<void> ImportBatch::passOn() {
    if (m_gathered.empty()) {
        return writeMade();
    }
    std::packaged_task<ReadingBlock()> task([readings = std::exchange(m_gathered, {}),
                                             used = std::exchange(m_used, {}),
                                             seal = m_seals.openBlock()]() mutable {
        used = {};
        // The task itself ends with the future, in the thread that writes.
        const std::vector<Reading> taken = std::move(readings);
        return blockOf(taken, seal);
    });
    std::future<ReadingBlock> making = task.get_future();
    std::jthread maker(std::move(task));
    Result<void> written = writeMade();
    m_made = std::move(making);
    m_maker = std::move(maker);
    m_gathered.reserve(kBlock);
    return written;
}

Result<void> ImportBatch::writeMade() {
    if (!m_made.valid()) {
        return {};
    }
    m_used = m_made.get();
    const TableShape& shape = Rows<Reading>::shape();
    qsizetype stored = 0;
    for (const Portion& portion : m_used.portions) {
        const Result<qsizetype> written = write(shape, portion);
        if (!written) {
            return tl::unexpected(written.error());
        }
        stored += *written;
    }
    if (stored != static_cast<qsizetype>(m_used.rows.size())) {
        if (Result<void> kept = keepNewRows(m_used); !kept) {
            return kept;
        }
    }
    m_seals.close(m_used.seal, shape, static_cast<qint64>(m_used.rows.size()), m_used.content);
    return {};
}

Result<void> ImportBatch::keepNewRows(ReadingBlock& block) {
    const QString sql = QStringLiteral(
        "SELECT r.checksum FROM reading r WHERE r.sitting_id = ? AND r.id = ? AND r.seal = ?");
    constexpr qsizetype kIdLength = 36;
    std::map<QByteArray, SealedRow> kept; // the same row may have come twice
    for (const SealedRow& row : block.rows) {
        const Result<QVariant> checksum =
            m_connection.scalar(sql, {QString::fromLatin1(row.key.left(kIdLength)),
                                      QString::fromLatin1(row.key.mid(kIdLength)),
                                      QVariant::fromValue<qlonglong>(block.seal)});
        if (!checksum) {
            return tl::unexpected(checksum.error());
        }
        if (checksum->isValid() && checksum->toLongLong() == checksumOf(row.digest)) {
            kept.emplace(row.key, row);
        }
    }
    block.rows.clear();
    for (auto& [key, row] : kept) {
        block.rows.push_back(std::move(row));
    }
    block.content = contentOf(block.rows);
    return {};
}

Result<void> ImportBatch::addRow(const TableShape& shape, const QVariantList& values) {
    m_written.insert(shape.name);
    QByteArray digest = rowDigest(shape.name, values);
    const Result<qsizetype> stored =
        write(shape, {withSeal(values, digest, m_seals.numberFor(shape)), 1, false});
    if (!stored) {
        return tl::unexpected(stored.error());
    }
    if (*stored > 0) {
        const QString id = values.at(shape.columns.indexOf(QStringLiteral("id"))).toString();
        m_seals.add(shape, {id.toLatin1(), std::move(digest)});
    }
    return {};
}

Result<qsizetype> ImportBatch::write(const TableShape& shape, const Portion& portion) {
    const auto key = std::tuple(shape.name, portion.packed, portion.rows);
    auto found = m_prepared.find(key);
    if (found == m_prepared.end()) {
        Result<InsertStatement> statement =
            portion.packed ? InsertStatement::preparePacked(m_connection, portion.rows)
                           : InsertStatement::prepare(m_connection, shape, portion.rows);
        if (!statement) {
            return tl::unexpected(statement.error());
        }
        found = m_prepared.emplace(key, std::move(*statement)).first;
    }
    return found->second.run(portion.values);
}

/// The rows written by this batch, beside the readings that checkReferences() has passed.
Result<void> ImportBatch::checkForeignKeys() {
    for (const QString& table : std::as_const(m_written)) {
        const Result<QVariant> orphan =
            m_connection.scalar(QStringLiteral("PRAGMA foreign_key_check(%1)").arg(table));
        if (!orphan) {
            return tl::unexpected(orphan.error());
        }
        if (orphan->isValid()) {
            return fail(StorageFault::Conflict, {table}, m_connection.path());
        }
    }
    return {};
}

Result<void> ImportBatch::commit() {
    return passOn()
        .and_then([&] { return writeMade(); })
        .and_then([&] { return m_seals.write(m_connection); })
        .and_then([&] {
            m_prepared.clear();
            return checkForeignKeys();
        })
        .and_then([&] { return m_transaction->commit(); });
}

} // namespace coilbook::storage
