#pragma once

#include "core/exchange/output_set.h"

#include <QString>

namespace coilbook {

/// Writes records as RFC 4180 has them: CRLF, quotes only where a cell needs them.
class CsvWriter {
public:
    explicit CsvWriter(OutputFile& file)
        : m_file(file) {}

    /// Digits, dates and the like, which need neither quotes nor a guard.
    void plain(const QString& cell);

    /// What somebody wrote, with its formula guard.
    void text(const QString& cell);

    void endRecord();

private:
    OutputFile& m_file;
    QByteArray m_record;
    bool m_isFirst = true;
};

} // namespace coilbook
