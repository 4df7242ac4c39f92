#include "core/storage/seal_blocks.h"

#include <QCryptographicHash>

#include <algorithm>
#include <utility>

namespace coilbook::storage {

QByteArray contentOf(std::vector<SealedRow> rows) {
    const auto byKey = [](const SealedRow& a, const SealedRow& b) {
        return a.key < b.key;
    };
    if (!std::is_sorted(rows.begin(), rows.end(), byKey)) {
        std::sort(rows.begin(), rows.end(), byKey);
    }
    QCryptographicHash all(QCryptographicHash::Sha256);
    for (const SealedRow& row : rows) {
        all.addData(row.digest);
    }
    return all.result();
}

qint64 SealBlocks::numberFor(const TableShape& shape) {
    Block& block = m_open[&shape];
    if (block.number == 0) {
        block.number = openBlock();
    }
    return block.number;
}

void SealBlocks::add(const TableShape& shape, SealedRow row) {
    Block& block = m_open[&shape];
    block.rows.push_back(std::move(row));
    if (block.rows.size() == kMostRows) {
        close(shape, block);
    }
}

void SealBlocks::close(const TableShape& shape, Block& block) {
    const auto rows = static_cast<qint64>(block.rows.size());
    close(block.number, shape, rows, contentOf(std::move(block.rows)));
    block = {};
}

void SealBlocks::close(qint64 number, const TableShape& shape, qint64 rows, QByteArray content) {
    SealContent seal;
    seal.subject = shape.name;
    seal.rows = rows;
    seal.content = std::move(content);
    m_closed.emplace(number, std::move(seal));
}

Result<void> SealBlocks::write(const Connection& connection) {
    for (auto& [shape, block] : m_open) {
        if (block.number != 0) {
            close(*shape, block);
        }
    }
    for (const auto& [number, seal] : m_closed) {
        if (Result<void> added = addSeal(connection, m_end, seal); !added) {
            return added;
        }
    }
    return {};
}

} // namespace coilbook::storage
