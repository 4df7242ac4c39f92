#pragma once

#include "core/exchange/exchange_columns.h"
#include "core/exchange/fault_log.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace coilbook {

/// The first record of an exchange file: what kind it is and which column stands where.
struct ExchangeHeader {
    ExchangeKind kind = ExchangeKind::Readings;
    std::vector<Column> columns; ///< by field

    [[nodiscard]] bool has(Column column) const;

    /// Where a column stands; behind the last one if it is not there.
    [[nodiscard]] std::size_t fieldOf(Column column) const;
};

/// Reads a header; nothing is returned if it has faults, which go to `faults`. `path` and `file`
/// say where it comes from, `line` is its own.
[[nodiscard]] std::optional<ExchangeHeader> readHeader(std::span<const std::string_view> names,
                                                       const QString& path, std::size_t file,
                                                       qint64 line, FaultLog& faults);

} // namespace coilbook
