#include "core/exchange/csv_writer.h"

#include "core/exchange/formula_guard.h"

#include <algorithm>

namespace coilbook {

namespace {

bool needsQuotes(const QString& cell) {
    return std::any_of(cell.begin(), cell.end(),
                       [](QChar c) { return QStringView(u",\"\r\n").contains(c); });
}

} // namespace

void CsvWriter::plain(const QString& cell) {
    if (!m_isFirst) {
        m_record += ',';
    }
    m_isFirst = false;
    m_record += cell.toUtf8();
}

void CsvWriter::text(const QString& cell) {
    QString written = guarded(cell);
    if (needsQuotes(written)) {
        written.replace(QLatin1Char('"'), QStringLiteral("\"\""));
        written = QLatin1Char('"') + written + QLatin1Char('"');
    }
    plain(written);
}

void CsvWriter::endRecord() {
    m_record += "\r\n";
    m_write(m_record);
    m_record.clear();
    m_isFirst = true;
}

} // namespace coilbook
