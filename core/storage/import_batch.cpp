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
constexpr std::size_t kBlock = 40 * static_cast<std::size_t>(kRowsPerStatement);

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
        .map([&](Transaction transaction) -> std::unique_ptr<LogbookStore::Batch> {
            batch->m_transaction.emplace(std::move(transaction));
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

std::vector<ImportBatch::Portion> ImportBatch::portionsOf(const std::vector<Reading>& readings) {
    const TableShape& shape = Rows<Reading>::shape();
    std::vector<Portion> portions;
    for (auto first = readings.begin(); first != readings.end();) {
        const auto end =
            first + std::min<std::ptrdiff_t>(kRowsPerStatement, readings.end() - first);
        Portion portion;
        portion.packed = std::all_of(first, end, PackedReading::fits);
        portion.rows = end - first;
        portion.values.reserve(
            portion.rows * (portion.packed ? PackedReading::kValues : shape.columns.size() + 1));
        for (; first != end; ++first) {
            portion.values.append(portion.packed
                                      ? PackedReading::values(*first)
                                      : withChecksum(shape, Rows<Reading>::values(*first)));
        }
        portions.push_back(std::move(portion));
    }
    return portions;
}

Result<void> ImportBatch::passOn() {
    std::packaged_task<std::vector<Portion>()> task(
        [readings = std::exchange(m_gathered, {}), used = std::exchange(m_used, {})]() mutable {
            used.clear();
            // The task itself ends with the future, in the thread that writes.
            const std::vector<Reading> taken = std::move(readings);
            return portionsOf(taken);
        });
    std::future<std::vector<Portion>> making = task.get_future();
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
    for (const Portion& portion : m_used) {
        if (Result<void> written = write(Rows<Reading>::shape(), portion); !written) {
            return written;
        }
    }
    return {};
}

Result<void> ImportBatch::write(const TableShape& shape, const Portion& portion) {
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
        .and_then([&] {
            m_prepared.clear();
            return checkForeignKeys();
        })
        .and_then([&] { return m_transaction->commit(); });
}

} // namespace coilbook::storage
