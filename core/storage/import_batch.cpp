#include "core/storage/import_batch.h"

#include <iterator>

namespace coilbook::storage {

namespace {

/// Rows of one INSERT. Measured: fewer cost a call each, more gain nothing.
constexpr int kRowsPerStatement = 50;
/// Readings of one block; about 3 MB of values.
constexpr std::size_t kBlock = 100 * static_cast<std::size_t>(kRowsPerStatement);

/// In KiB, with PRAGMA cache_size's sign: 64 MiB while importing, SQLite's own size otherwise.
constexpr int kImportCache = -65536;
constexpr int kUsualCache = -2000;

Result<void> setCache(const Connection& connection, int size) {
    return connection.run(QStringLiteral("PRAGMA cache_size=%1").arg(size));
}

} // namespace

ImportBatch::ImportBatch(const Connection& connection, Transaction transaction)
    : m_connection(connection)
    , m_transaction(std::move(transaction)) {
    m_gathered.reserve(kBlock);
}

ImportBatch::~ImportBatch() {
    m_prepared.clear();
    [[maybe_unused]] const Result<void> done = setCache(m_connection, kUsualCache);
}

Result<std::unique_ptr<LogbookStore::Batch>> ImportBatch::begin(const Connection& connection) {
    if (Result<void> sized = setCache(connection, kImportCache); !sized) {
        return tl::unexpected(sized.error());
    }
    Result<Transaction> transaction = Transaction::write(connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    return std::unique_ptr<LogbookStore::Batch>(
        new ImportBatch(connection, std::move(*transaction)));
}

Result<void> ImportBatch::add(const Reading& reading) {
    m_gathered.push_back(reading);
    if (m_gathered.size() < kBlock) {
        return {};
    }
    return passOn();
}

ImportBatch::Statements ImportBatch::statementsOf(const std::vector<Reading>& readings) {
    const TableShape& shape = Rows<Reading>::shape();
    const qsizetype width = shape.columns.size() + 1;
    Statements statements;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (i % kRowsPerStatement == 0) {
            statements.emplace_back();
            statements.back().reserve(width * kRowsPerStatement);
        }
        statements.back().append(withChecksum(shape, Rows<Reading>::values(readings[i])));
    }
    return statements;
}

Result<void> ImportBatch::passOn() {
    std::packaged_task<Statements()> task(
        [readings = std::exchange(m_gathered, {})] { return statementsOf(readings); });
    std::future<Statements> making = task.get_future();
    // The one before has ended when its result is taken in writeMade().
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
    const TableShape& shape = Rows<Reading>::shape();
    const qsizetype width = shape.columns.size() + 1;
    const Statements statements = m_made.get();
    for (const QVariantList& values : statements) {
        const int rows = static_cast<int>(values.size() / width);
        if (Result<void> written = write(shape, rows, values); !written) {
            return written;
        }
    }
    return {};
}

Result<void> ImportBatch::write(const TableShape& shape, int rows, const QVariantList& values) {
    const QString sql = insertSql(shape, rows);
    auto found = m_prepared.find(sql);
    if (found == m_prepared.end()) {
        Result<QSqlQuery> query = m_connection.prepare(sql);
        if (!query) {
            return tl::unexpected(query.error());
        }
        found = m_prepared.emplace(sql, std::move(*query)).first;
    }
    QSqlQuery& query = found->second;
    for (qsizetype i = 0; i < values.size(); ++i) {
        query.bindValue(static_cast<int>(i), values.at(i));
    }
    return m_connection.execute(query);
}

Result<void> ImportBatch::commit() {
    return passOn().and_then([&] { return writeMade(); }).and_then([&] {
        m_prepared.clear();
        return m_transaction.commit();
    });
}

} // namespace coilbook::storage
