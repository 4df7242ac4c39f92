#include "core/storage/durable_files.h"

#include "core/support/uuid7.h"

#include <QFile>
#include <QFileInfo>

#include <filesystem>
#include <system_error>

#ifdef Q_OS_UNIX
#include <cerrno>
#include <fcntl.h>
#include <unistd.h>
#endif

namespace coilbook::storage {

namespace {

/// Puts what the system still holds of a file or folder onto the disk.
std::error_code flushToDisk([[maybe_unused]] const QString& path) {
#ifdef Q_OS_UNIX
    const int descriptor = ::open(QFile::encodeName(path).constData(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return {errno, std::system_category()};
    }
    const int outcome = ::fsync(descriptor);
    const std::error_code error =
        outcome == 0 ? std::error_code() : std::error_code(errno, std::system_category());
    ::close(descriptor);
    return error;
#else
    return {};
#endif
}

Result<void> outcomeOf(const std::error_code& error, const QString& path) {
    if (error) {
        return fail(StorageFault::InputOutput, {QString::fromStdString(error.message())}, path);
    }
    return {};
}

} // namespace

QString unfinishedName(const QString& path) {
    return QStringLiteral("%1.%2.tmp").arg(path, makeUuid7().toString(QUuid::WithoutBraces));
}

Result<void> moveDurably(const QString& from, const QString& to) {
    if (Result<void> flushed = outcomeOf(flushToDisk(from), from); !flushed) {
        return flushed;
    }
    if (QFileInfo::exists(to)) {
        return fail(StorageFault::AlreadyExists, {}, to);
    }
    std::error_code error;
    std::filesystem::rename(QFile::encodeName(from).toStdString(),
                            QFile::encodeName(to).toStdString(), error);
    if (error) {
        return outcomeOf(error, to);
    }
    return outcomeOf(flushToDisk(QFileInfo(to).absolutePath()), to);
}

} // namespace coilbook::storage
