#pragma once

#include "core/exchange/exchange_rows.h"
#include "core/exchange/fault_log.h"
#include "core/support/clock.h"

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace coilbook {

/// Turns the records of one exchange file into rows, with every check that one record allows.
class RowParser {
public:
    /// `file` is the number of `about` among the files of the import; `lastDay` is the last date
    /// that is allowed.
    RowParser(const ExchangeFile& about, std::size_t file, const QDate& lastDay, TextPool& texts,
              FaultLog& faults);

    /// Nothing if the record has faults; they go to the log.
    [[nodiscard]] std::optional<ReadingRow> reading(std::span<const std::string_view> cells,
                                                    qint64 line);
    [[nodiscard]] std::optional<RaceRow> race(std::span<const std::string_view> cells, qint64 line);

private:
    struct Cell {
        std::string_view text;
        std::size_t field;
    };

    [[nodiscard]] bool begin(std::span<const std::string_view> cells, qint64 line);
    void readReadingCell(ReadingRow& row, const Cell& cell);
    void readRaceCell(RaceRow& row, const Cell& cell);
    void readForce(ReadingRow& row, const Cell& cell, ForceUnit unit);
    [[nodiscard]] TextId text(const Cell& cell);
    [[nodiscard]] TextId name(const Cell& cell);
    [[nodiscard]] std::int32_t day(const Cell& cell);
    [[nodiscard]] std::int32_t count(const Cell& cell, int least, int most);
    template <class Fault>
    void report(const Cell& cell, Fault fault, bool withText = true,
                std::initializer_list<qint64> numbers = {});

    const ExchangeFile& m_about;
    std::size_t m_file;
    QDate m_firstDay{1950, 1, 1};
    QDate m_lastDay;
    TextPool& m_texts;
    FaultLog& m_faults;
    std::vector<TextId> m_latest; ///< the text of each field in the record before
    std::string m_latestDate;     ///< as written, the last one that was sound
    std::int32_t m_latestDay = 0;
    qint64 m_line = 0;
    bool m_isSound = true;
    int m_readings = 0; ///< reading cells filled in this record
};

} // namespace coilbook
