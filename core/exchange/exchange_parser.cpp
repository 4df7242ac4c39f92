#include "core/exchange/exchange_parser.h"

#include "core/exchange/csv_reader.h"
#include "core/exchange/row_parser.h"

#include <QFileInfo>

#include <algorithm>

namespace coilbook {

namespace {

constexpr qint64 kRowsBetweenReports = 1 << 14;

/// Reads one file after the other and keeps count for the progress.
class FileSet {
public:
    FileSet(const Clock& clock, const Progress& progress, ExchangeInput& input, FaultLog& faults)
        : m_lastDay(clock.today().addDays(1))
        , m_progress(progress)
        , m_input(input)
        , m_faults(faults) {}

    bool read(const QStringList& paths) {
        for (const QString& path : paths) {
            m_bytesInAll += QFileInfo(path).size();
        }
        m_input.files.reserve(static_cast<std::size_t>(paths.size()));
        return std::all_of(paths.begin(), paths.end(),
                           [this](const QString& path) { return readFile(path); });
    }

private:
    bool readFile(const QString& path) {
        const std::size_t number = m_input.files.size();
        ExchangeFile& file = m_input.files.emplace_back(ExchangeFile{path, {}});
        CsvReader reader(path);
        if (!readHeaderOf(reader, file, number)) {
            return true;
        }
        RowParser parser(file, number, m_lastDay, m_input.texts, m_faults);
        qint64 rows = 0;
        CsvReader::Outcome outcome{};
        while ((outcome = reader.next()) != CsvReader::Outcome::End) {
            if (outcome == CsvReader::Outcome::Fault) {
                report(reader.fault(), file, number);
                continue;
            }
            store(parser, reader, file.header.kind);
            if (++rows % kRowsBetweenReports == 0 && !goOn(reader.bytesRead())) {
                return false;
            }
        }
        m_bytesBefore += reader.bytesRead();
        return goOn(0);
    }

    bool readHeaderOf(CsvReader& reader, ExchangeFile& file, std::size_t number) {
        CsvReader::Outcome outcome = reader.next();
        while (outcome == CsvReader::Outcome::Fault) {
            report(reader.fault(), file, number);
            if (reader.fault().what != InputFault::BlankLine) {
                return false;
            }
            outcome = reader.next();
        }
        if (outcome == CsvReader::Outcome::End) {
            m_faults.add({number, 0, 0}, Error{InputFault::EmptyFile, {}, file.path, 0, {}, 0, {}});
            return false;
        }
        const std::optional<ExchangeHeader> header =
            readHeader(reader.fields(), file.path, number, reader.line(), m_faults);
        if (header) {
            file.header = *header;
        }
        return header.has_value();
    }

    void store(RowParser& parser, const CsvReader& reader, ExchangeKind kind) {
        if (kind == ExchangeKind::Readings) {
            if (const auto row = parser.reading(reader.fields(), reader.line())) {
                m_input.readings.push_back(*row);
            }
        } else if (const auto row = parser.race(reader.fields(), reader.line())) {
            m_input.races.push_back(*row);
        }
    }

    void report(const CsvReader::Fault& fault, const ExchangeFile& file, std::size_t number) {
        const std::vector<Column>& columns = file.header.columns;
        const bool isInCell = fault.what != InputFault::BlankLine && fault.field < columns.size();
        const QString column = isInCell ? columnName(columns[fault.field]) : QString();
        QStringList arguments;
        if (fault.what == InputFault::CannotRead) {
            arguments = {fault.detail};
        } else if (fault.what == InputFault::RecordTooLong) {
            arguments = {QString::number(CsvReader::kMostRecordMegabytes)};
        }
        m_faults.add({number, fault.line, fault.field},
                     Error{fault.what, arguments, file.path, fault.line, column, 0, {}});
    }

    bool goOn(qint64 bytesRead) {
        const auto all = static_cast<double>(std::max<qint64>(m_bytesInAll, 1));
        const auto done = static_cast<double>(m_bytesBefore + bytesRead);
        return !m_progress || m_progress(std::min(done / all, 1.0));
    }

    QDate m_lastDay;
    const Progress& m_progress;
    ExchangeInput& m_input;
    FaultLog& m_faults;
    qint64 m_bytesInAll = 0;
    qint64 m_bytesBefore = 0;
};

} // namespace

bool readExchangeFiles(const QStringList& paths, const Clock& clock, const Progress& progress,
                       ExchangeInput& input, FaultLog& faults) {
    return FileSet(clock, progress, input, faults).read(paths);
}

} // namespace coilbook
