#pragma once

#include <QString>
#include <gtest/gtest.h>

#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace coilbook::testing {

/// A table of outside reference data from tests/data: plain commas and a header; lines that begin
/// with a hash are remarks, quotes around a cell are dropped and keep its commas.
class CsvTable {
public:
    explicit CsvTable(const std::string& file) {
        std::ifstream stream(std::string(COILBOOK_TEST_DATA) + '/' + file);
        std::string line;
        while (std::getline(stream, line)) {
            if (line.starts_with('#')) {
                m_remarks.push_back(line);
                continue;
            }
            (m_header.empty() ? m_header : m_rows.emplace_back()) = cellsOf(line);
        }
        if (m_rows.empty()) {
            throw std::runtime_error("no reference data in " + file);
        }
    }

    [[nodiscard]] std::size_t rows() const { return m_rows.size(); }

    [[nodiscard]] const std::vector<std::string>& remarks() const { return m_remarks; }

    [[nodiscard]] std::string text(std::size_t row, const std::string& column) const {
        for (std::size_t i = 0; i < m_header.size(); ++i) {
            if (m_header[i] == column) {
                return m_rows.at(row).at(i);
            }
        }
        throw std::runtime_error("no column " + column);
    }

    [[nodiscard]] double number(std::size_t row, const std::string& column) const {
        return std::stod(text(row, column));
    }

    [[nodiscard]] std::vector<double> numbers(const std::string& column) const {
        std::vector<double> values;
        for (std::size_t row = 0; row < rows(); ++row) {
            values.push_back(number(row, column));
        }
        return values;
    }

private:
    static std::vector<std::string> cellsOf(const std::string& line) {
        std::vector<std::string> cells(1);
        bool quoted = false;
        for (const char c : line) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.emplace_back();
            } else if (c != '\r') {
                cells.back() += c;
            }
        }
        if (cells.back().empty()) {
            cells.pop_back();
        }
        return cells;
    }

    std::vector<std::string> m_remarks;
    std::vector<std::string> m_header;
    std::vector<std::vector<std::string>> m_rows;
};

} // namespace coilbook::testing
