#pragma once

#include "core/support/result.h"

#include <QByteArray>
#include <QString>

namespace coilbook {

/// The results of a command on their way to standard output. They are kept until flush(), so that
/// a command that fails has printed nothing. Commands whose result is a file print nothing.
class Output {
public:
    /// Adds a line; its end is put here.
    void line(const QString& text);

    /// Adds bytes as they are.
    void raw(const QByteArray& bytes) { m_bytes += bytes; }

    /// Writes what was added since the last call; StorageFault::CannotWriteOutput.
    [[nodiscard]] Result<void> flush();

private:
    QByteArray m_bytes;
};

} // namespace coilbook
