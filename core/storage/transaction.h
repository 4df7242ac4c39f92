#pragma once

#include "core/storage/connection.h"

namespace coilbook::storage {

/// A transaction on one connection: rolls back when destroyed without a successful commit().
class Transaction {
public:
    /// Takes the right to write at once (BEGIN IMMEDIATE), so that nothing read inside can be
    /// outdated when it is written upon.
    [[nodiscard]] static Result<Transaction> write(const Connection& connection);

    /// One consistent view over several statements.
    [[nodiscard]] static Result<Transaction> read(const Connection& connection);

    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    ~Transaction();

    /// On success everything is on the disk.
    [[nodiscard]] Result<void> commit();

private:
    explicit Transaction(const Connection& connection);

    const Connection* m_connection; ///< null: committed, rolled back or moved away
};

} // namespace coilbook::storage
