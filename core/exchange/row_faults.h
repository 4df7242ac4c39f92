#pragma once

#include "core/exchange/exchange_rows.h"
#include "core/exchange/fault_log.h"

namespace coilbook {

/// Reports what is wrong with rows that were read, at the cell where it shows.
class RowFaults {
public:
    RowFaults(const ExchangeInput& input, FaultLog& faults)
        : m_files(input.files)
        , m_faults(faults) {}

    /// `row` is a ReadingRow or a RaceRow.
    template <class Row, class Fault>
    void add(const Row& row, Column column, Fault fault, const QStringList& arguments) {
        const ExchangeFile& file = m_files[row.file];
        m_faults.add({row.file, row.line, file.header.fieldOf(column)},
                     Error{fault, arguments, file.path, row.line, columnName(column), 0, {}});
    }

    /// Where another row stands, as two arguments of a fault: its file, empty if it is that of
    /// `row`, and its line.
    template <class Row>
    [[nodiscard]] QStringList whereIs(const Row& other, const Row& row) const {
        return {other.file == row.file ? QString() : m_files[other.file].path,
                QString::number(other.line)};
    }

private:
    const std::vector<ExchangeFile>& m_files;
    FaultLog& m_faults;
};

} // namespace coilbook
