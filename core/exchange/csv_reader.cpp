#include "core/exchange/csv_reader.h"

#include <QByteArrayView>

#include <array>
#include <cstring>

namespace coilbook {

namespace {

constexpr std::size_t kBlock = 1U << 20U;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

constexpr auto kEndsPlainCell = [] {
    std::array<bool, 256> ends{};
    for (const char c : {',', '\n', '\r', '"'}) {
        ends[static_cast<unsigned char>(c)] = true;
    }
    return ends;
}();

bool endsPlainCell(char c) {
    return kEndsPlainCell[static_cast<unsigned char>(c)];
}

/// Keeps one quote of each pair; in a quoted cell they come in pairs only. Returns the new end.
char* joinDoubledQuotes(const char* from, const char* end, char* to) {
    while (from != end) {
        from += *from == '"' ? 1 : 0;
        *to++ = *from++;
    }
    return to;
}

} // namespace

CsvReader::CsvReader(const QString& path)
    : m_file(path) {}

CsvReader::Outcome CsvReader::next() {
    if (m_stopped) {
        return Outcome::End;
    }
    if (!m_started && !start()) {
        return stop(InputFault::CannotRead, 0);
    }
    for (;;) {
        m_begin = m_next;
        m_line = m_nextLine;
        if (m_begin == m_end && m_atEnd) {
            return Outcome::End;
        }
        const Scan scan = scanRecord();
        if (scan == Scan::NeedsMore) {
            if (!fill()) {
                return stop(!m_readError.isEmpty() ? InputFault::CannotRead
                            : m_insideQuotes       ? InputFault::QuoteNotClosed
                                                   : InputFault::RecordTooLong,
                            m_cells.size());
            }
            continue;
        }
        if (scan == Scan::Broken) {
            return stop(m_fault.what, m_cells.size());
        }
        if (isBlank()) {
            m_blankLine = m_blankLine == 0 ? m_line : m_blankLine;
            continue;
        }
        if (m_blankLine != 0) {
            m_fault = {InputFault::BlankLine, m_blankLine, 0, false, {}};
            m_blankLine = 0;
            m_next = m_begin; // the record after the blank lines is for the next call
            m_nextLine = m_line;
            return Outcome::Fault;
        }
        if (!textIsSound()) {
            return Outcome::Fault;
        }
        takeFields();
        return Outcome::Record;
    }
}

bool CsvReader::start() {
    m_started = true;
    if (!m_file.open(QIODevice::ReadOnly | QIODevice::Unbuffered)) {
        m_readError = m_file.errorString();
        return false;
    }
    m_bytesInAll = m_file.isSequential() ? 0 : m_file.size();
    m_buffer.resize(kBlock);
    while (m_end < kByteOrderMark.size() && !m_atEnd) {
        if (!fill()) {
            return false;
        }
    }
    if (std::string_view(m_buffer.data(), m_end).substr(0, kByteOrderMark.size()) ==
        kByteOrderMark) {
        m_next = kByteOrderMark.size();
    }
    return true;
}

/// Reads on behind the bytes of the record begun, which move to the front of the buffer. False if
/// the file cannot be read or the record is too long.
bool CsvReader::fill() {
    std::memmove(m_buffer.data(), m_buffer.data() + m_begin, m_end - m_begin);
    m_end -= m_begin;
    m_next = m_begin = 0;
    if (m_end == m_buffer.size()) {
        if (m_buffer.size() >= kMostRecordMegabytes * kBlock) {
            return false;
        }
        m_buffer.resize(2 * m_buffer.size());
    }
    const qint64 count =
        m_file.read(m_buffer.data() + m_end, static_cast<qint64>(m_buffer.size() - m_end));
    if (count < 0) {
        m_readError = m_file.errorString();
        return false;
    }
    m_atEnd = count == 0;
    m_end += static_cast<std::size_t>(count);
    m_bytesRead += count;
    return true;
}

/// Finds the cells of the record at m_begin without changing the buffer, since it has to start over
/// when the record goes on behind the bytes read so far.
CsvReader::Scan CsvReader::scanRecord() {
    m_cells.clear();
    m_insideQuotes = false;
    std::size_t at = m_begin;
    qint64 newlines = 0;
    bool lineEnds = false;
    while (!lineEnds) {
        if (at == m_end && !m_atEnd) {
            return Scan::NeedsMore;
        }
        const bool isQuoted = at < m_end && m_buffer[at] == '"';
        Scan scan = isQuoted ? scanQuoted(at, newlines) : scanPlain(at);
        if (scan == Scan::Complete) {
            scan = scanEnd(at, lineEnds);
        }
        if (scan != Scan::Complete) {
            return scan;
        }
    }
    m_next = at;
    m_nextLine = m_line + newlines + 1;
    return Scan::Complete;
}

CsvReader::Scan CsvReader::scanPlain(std::size_t& at) {
    const std::size_t begin = at;
    while (at < m_end && !endsPlainCell(m_buffer[at])) {
        ++at;
    }
    if (at == m_end && !m_atEnd) {
        return Scan::NeedsMore;
    }
    if (at < m_end && m_buffer[at] == '"') {
        return broken(InputFault::StrayQuote);
    }
    m_cells.push_back({begin, at, false});
    return Scan::Complete;
}

CsvReader::Scan CsvReader::scanQuoted(std::size_t& at, qint64& newlines) {
    Cell cell{at + 1, at + 1, false};
    for (++at; at < m_end; ++at) {
        if (m_buffer[at] == '\n') {
            ++newlines;
        } else if (m_buffer[at] == '"') {
            const bool isLastByte = at + 1 == m_end;
            if (isLastByte && !m_atEnd) {
                break;
            }
            if (isLastByte || m_buffer[at + 1] != '"') {
                cell.end = at++;
                m_cells.push_back(cell);
                return Scan::Complete;
            }
            cell.hasDoubledQuotes = true;
            ++at;
        }
    }
    if (m_atEnd) {
        return broken(InputFault::QuoteNotClosed);
    }
    m_insideQuotes = true;
    return Scan::NeedsMore;
}

/// What stands behind a cell: a comma, the end of the line, or the end of the file.
CsvReader::Scan CsvReader::scanEnd(std::size_t& at, bool& lineEnds) {
    if (at == m_end) {
        lineEnds = m_atEnd;
        return m_atEnd ? Scan::Complete : Scan::NeedsMore;
    }
    switch (m_buffer[at]) {
    case ',':
        ++at;
        return Scan::Complete;
    case '\n':
        ++at;
        lineEnds = true;
        return Scan::Complete;
    case '\r':
        if (at + 1 == m_end && !m_atEnd) {
            return Scan::NeedsMore;
        }
        if (at + 1 == m_end || m_buffer[at + 1] != '\n') {
            m_cells.pop_back();
            return broken(InputFault::BareCarriageReturn);
        }
        at += 2;
        lineEnds = true;
        return Scan::Complete;
    default:
        m_cells.pop_back();
        return broken(InputFault::TextAfterQuote);
    }
}

/// An empty line; a line with `""` on it holds a cell and is none.
bool CsvReader::isBlank() const {
    return m_cells.size() == 1 && m_cells.front().begin == m_begin &&
           m_cells.front().end == m_begin;
}

bool CsvReader::textIsSound() {
    const auto isSound = [this](std::size_t begin, std::size_t end, InputFault& what) {
        const char* data = m_buffer.data() + begin;
        const std::size_t size = end - begin;
        if (size == 0) {
            return true;
        }
        if (!QByteArrayView(data, static_cast<qsizetype>(size)).isValidUtf8()) {
            what = InputFault::InvalidUtf8;
            return false;
        }
        what = InputFault::NulByte;
        return std::memchr(data, 0, size) == nullptr;
    };
    InputFault what{};
    if (isSound(m_begin, m_next, what)) {
        return true;
    }
    for (std::size_t field = 0; field < m_cells.size(); ++field) {
        if (!isSound(m_cells[field].begin, m_cells[field].end, what)) {
            m_fault = {what, m_line, field, false, {}};
            return false;
        }
    }
    return true;
}

void CsvReader::takeFields() {
    m_fields.clear();
    for (const Cell& cell : m_cells) {
        char* begin = m_buffer.data() + cell.begin;
        char* end = m_buffer.data() + cell.end;
        if (cell.hasDoubledQuotes) {
            end = joinDoubledQuotes(begin, end, begin);
        }
        m_fields.emplace_back(begin, static_cast<std::size_t>(end - begin));
    }
}

CsvReader::Scan CsvReader::broken(InputFault what) {
    m_fault.what = what;
    return Scan::Broken;
}

CsvReader::Outcome CsvReader::stop(InputFault what, std::size_t field) {
    m_stopped = true;
    m_fault = {what, m_readError.isEmpty() ? m_line : 0, field, true, m_readError};
    return Outcome::Fault;
}

} // namespace coilbook
