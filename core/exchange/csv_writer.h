#pragma once

#include "core/exchange/output_set.h"

#include <QString>

#include <functional>

namespace coilbook {

/// Writes records as RFC 4180 has them: CRLF, quotes only where a cell needs them.
class CsvWriter {
public:
    using Write = std::function<void(QByteArrayView)>;

    explicit CsvWriter(Write write)
        : m_write(std::move(write)) {}

    explicit CsvWriter(OutputFile& file)
        : m_write([&file](QByteArrayView bytes) { file.write(bytes); }) {}

    /// Digits, dates and the like, which need neither quotes nor a guard.
    void plain(const QString& cell);

    /// What somebody wrote, with its formula guard.
    void text(const QString& cell);

    void endRecord();

private:
    Write m_write;
    QByteArray m_record;
    bool m_isFirst = true;
};

} // namespace coilbook
