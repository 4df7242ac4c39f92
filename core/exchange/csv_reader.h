#pragma once

#include "core/support/input_fault.h"

#include <QFile>
#include <QString>

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace coilbook {

/// Reads the records of a CSV file one after the other: RFC 4180, UTF-8 with or without a
/// byte-order mark, lines ended by LF or CRLF. The file is read in blocks, so memory stays flat
/// whatever its size; a record may be 16 MB long.
class CsvReader {
public:
    static constexpr std::size_t kMostRecordMegabytes = 16;

    enum class Outcome {
        Record, ///< fields() and line() hold the next one
        End,
        Fault, ///< fault(); next() goes on behind it unless fault().isFatal
    };

    struct Fault {
        InputFault what = InputFault::EmptyFile;
        qint64 line = 0;       ///< on which the record at fault starts, the first is 1
        std::size_t field = 0; ///< counted from 0
        bool isFatal = false;  ///< where the next record starts cannot be told
        QString detail;        ///< what the system said, for CannotRead
    };

    explicit CsvReader(const QString& path);

    [[nodiscard]] Outcome next();

    /// The cells of the record with quotes taken away; valid until the next call of next().
    [[nodiscard]] std::span<const std::string_view> fields() const { return m_fields; }

    /// The physical line on which the record starts; lines inside quotes count.
    [[nodiscard]] qint64 line() const { return m_line; }

    [[nodiscard]] const Fault& fault() const { return m_fault; }

    [[nodiscard]] qint64 bytesRead() const { return m_bytesRead; }

    /// Size of the file when it was opened; 0 where that cannot be told (a pipe).
    [[nodiscard]] qint64 bytesInAll() const { return m_bytesInAll; }

private:
    /// A cell within m_buffer, by offset since the buffer may move.
    struct Cell {
        std::size_t begin;
        std::size_t end;
        bool hasDoubledQuotes;
    };

    enum class Scan { Complete, NeedsMore, Broken };

    [[nodiscard]] bool start();
    [[nodiscard]] bool fill();
    [[nodiscard]] Scan scanRecord();
    [[nodiscard]] Scan scanPlain(std::size_t& at);
    [[nodiscard]] Scan scanQuoted(std::size_t& at, qint64& newlines);
    [[nodiscard]] Scan scanEnd(std::size_t& at, bool& lineEnds);
    [[nodiscard]] bool isBlank() const;
    [[nodiscard]] bool textIsSound();
    void takeFields();
    [[nodiscard]] Scan broken(InputFault what);
    [[nodiscard]] Outcome stop(InputFault what, std::size_t field);

    QFile m_file;
    std::vector<char> m_buffer;
    std::size_t m_begin = 0;     ///< of the record being read
    std::size_t m_end = 0;       ///< of the bytes in the buffer
    std::size_t m_next = 0;      ///< where the record after it begins
    bool m_atEnd = false;        ///< no more bytes come from the file
    bool m_insideQuotes = false; ///< when the scan last ran out of bytes
    bool m_started = false;
    bool m_stopped = false; ///< after a fatal fault
    std::vector<Cell> m_cells;
    std::vector<std::string_view> m_fields;
    qint64 m_line = 0;
    qint64 m_nextLine = 1;
    qint64 m_blankLine = 0; ///< the first of blank lines passed over, 0: none
    qint64 m_bytesRead = 0;
    qint64 m_bytesInAll = 0;
    QString m_readError;
    Fault m_fault;
};

} // namespace coilbook
