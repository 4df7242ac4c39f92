#include "core/storage/import_batch.h"

#include <algorithm>
#include <utility>

namespace coilbook::storage {

namespace {

/// Rows of one INSERT.
constexpr std::size_t kRowsPerStatement = 50;
/// Readings of one block; about 3 MB of values.
constexpr std::size_t kBlock = 100 * kRowsPerStatement;

/// In KiB, with PRAGMA cache_size's sign: 64 MiB while importing, SQLite's own size otherwise.
constexpr int kImportCache = -65536;
constexpr int kUsualCache = -2000;

Result<void> setCache(const Connection& connection, int size) {
    return connection.run(QStringLiteral("PRAGMA cache_size=%1").arg(size));
}

/// Whether all that an INSERT need not name has its default.
bool isPlain(const TableShape& shape, const QVariantList& row) {
    const auto isDefault = [](const QVariant& value) {
        return value.isNull() ||
               (value.userType() == QMetaType::QString ? value.toString().isEmpty()
                                                       : value.toLongLong() == 0);
    };
    return shape.needed > 0 &&
           std::all_of(row.begin() + shape.needed, row.begin() + shape.columns.size(), isDefault);
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

std::vector<ImportBatch::Portion> ImportBatch::portionsOf(const std::vector<Reading>& readings) {
    const TableShape& shape = Rows<Reading>::shape();
    std::vector<Portion> portions;
    for (std::size_t first = 0; first < readings.size(); first += kRowsPerStatement) {
        const std::size_t end = std::min(first + kRowsPerStatement, readings.size());
        std::vector<QVariantList> rows;
        rows.reserve(kRowsPerStatement);
        bool plain = true;
        for (std::size_t i = first; i < end; ++i) {
            rows.push_back(withChecksum(shape, Rows<Reading>::values(readings[i])));
            plain = plain && isPlain(shape, rows.back());
        }
        Portion portion{
            {}, plain ? shape.needed : shape.columns.size(), static_cast<qsizetype>(rows.size())};
        portion.values.reserve(portion.rows * (portion.columns + 1));
        for (QVariantList& row : rows) {
            row.remove(portion.columns, shape.columns.size() - portion.columns);
            portion.values.append(std::move(row));
        }
        portions.push_back(std::move(portion));
    }
    return portions;
}

Result<void> ImportBatch::passOn() {
    std::packaged_task<std::vector<Portion>()> task(
        [readings = std::exchange(m_gathered, {})] { return portionsOf(readings); });
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
    const std::vector<Portion> portions = m_made.get();
    for (const Portion& portion : portions) {
        if (Result<void> written = write(Rows<Reading>::shape(), portion); !written) {
            return written;
        }
    }
    return {};
}

Result<void> ImportBatch::write(const TableShape& shape, const Portion& portion) {
    const auto key = std::tuple(shape.name, portion.columns, portion.rows);
    auto found = m_prepared.find(key);
    if (found == m_prepared.end()) {
        Result<InsertStatement> statement =
            InsertStatement::prepare(m_connection, shape, portion.columns, portion.rows);
        if (!statement) {
            return tl::unexpected(statement.error());
        }
        found = m_prepared.emplace(key, std::move(*statement)).first;
    }
    return found->second.run(portion.values);
}

Result<void> ImportBatch::commit() {
    return passOn().and_then([&] { return writeMade(); }).and_then([&] {
        m_prepared.clear();
        return m_transaction.commit();
    });
}

} // namespace coilbook::storage
