#pragma once

#include "core/storage/seals.h"

#include <map>
#include <vector>

namespace coilbook::storage {

/// A new row as its block knows it.
struct SealedRow {
    QByteArray
        key; ///< the ids of its primary key, one after the other; rows are sealed in its order
    QByteArray digest;
};

/// SHA-256 over the digests of the rows in order of key.
[[nodiscard]] QByteArray contentOf(std::vector<SealedRow> rows);

/// The seals of an import: rows are gathered into blocks, each of one table and with a number given
/// beforehand, and the blocks are tied to the chain when all of them are there. One seal per row,
/// as single changes have it, would more than double the file of a big import (196 bytes a seal
/// beside 169 a reading, 300,000 of each measured) and insert a second row for each reading.
class SealBlocks {
public:
    static constexpr std::size_t kMostRows = 2000;

    explicit SealBlocks(ChainEnd end)
        : m_end(std::move(end))
        , m_next(m_end.number + 1) {}

    /// The number of the block that takes the next row of a table.
    [[nodiscard]] qint64 numberFor(const TableShape& shape);
    void add(const TableShape& shape, SealedRow row);

    /// A number for a block that the caller gathers itself and gives to close().
    [[nodiscard]] qint64 openBlock() { return m_next++; }

    void close(qint64 number, const TableShape& shape, qint64 rows, QByteArray content);

    /// Ties all blocks to the chain.
    [[nodiscard]] Result<void> write(const Connection& connection);

private:
    struct Block {
        qint64 number = 0;
        std::vector<SealedRow> rows;
    };

    void close(const TableShape& shape, Block& block);

    ChainEnd m_end;
    qint64 m_next;
    std::map<const TableShape*, Block> m_open;
    std::map<qint64, SealContent> m_closed;
};

} // namespace coilbook::storage
