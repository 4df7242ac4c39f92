#include "core/storage/transaction.h"

#include <utility>

namespace coilbook::storage {

namespace {

/// Each try waits for the connection's busy timeout (250 ms): about two seconds in all. A backup by
/// another program may hold a commit up for that long.
constexpr int kTries = 8;

Result<void> runPatiently(const Connection& connection, const QString& sql) {
    Result<void> done = connection.run(sql);
    for (int i = 1; i < kTries && !done; ++i) {
        const auto* fault = std::get_if<StorageFault>(&done.error().fault);
        if (fault == nullptr || *fault != StorageFault::Locked) {
            break;
        }
        done = connection.run(sql);
    }
    return done;
}

} // namespace

Transaction::Transaction(const Connection& connection)
    : m_connection(&connection) {}

Transaction::Transaction(Transaction&& other) noexcept
    : m_connection(std::exchange(other.m_connection, nullptr)) {}

Transaction::~Transaction() {
    if (m_connection != nullptr) {
        // After some failures (a full disk) SQLite has rolled back already and says so here.
        [[maybe_unused]] const Result<void> rolledBack =
            m_connection->run(QStringLiteral("ROLLBACK"));
    }
}

Result<Transaction> Transaction::write(const Connection& connection) {
    if (Result<void> begun = runPatiently(connection, QStringLiteral("BEGIN IMMEDIATE")); !begun) {
        return tl::unexpected(begun.error());
    }
    return Transaction(connection);
}

Result<Transaction> Transaction::read(const Connection& connection) {
    if (Result<void> begun = connection.run(QStringLiteral("BEGIN")); !begun) {
        return tl::unexpected(begun.error());
    }
    return Transaction(connection);
}

Result<void> Transaction::commit() {
    Q_ASSERT(m_connection != nullptr);
    Result<void> done = runPatiently(*m_connection, QStringLiteral("COMMIT"));
    if (done) {
        m_connection = nullptr;
    }
    return done;
}

} // namespace coilbook::storage
