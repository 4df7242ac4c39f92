#include "app/command_line/output.h"

#include "app/command_line/text.h"

#include <cerrno>
#include <cstdio>
#include <cstring>

namespace coilbook {

void Output::line(const QString& text) {
    m_bytes += text.toUtf8();
    m_bytes += '\n';
}

Result<void> Output::flush() {
    const QByteArray bytes = std::exchange(m_bytes, {});
    const auto size = static_cast<std::size_t>(bytes.size());
    if (std::fwrite(bytes.constData(), 1, size, stdout) == size && std::fflush(stdout) == 0) {
        return {};
    }
    return fail(StorageFault::CannotWriteOutput, {QString::fromLocal8Bit(std::strerror(errno))},
                CommandText::tr("standard output"));
}

} // namespace coilbook
