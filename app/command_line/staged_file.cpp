#include "app/command_line/staged_file.h"

#include "core/support/uuid7.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <unistd.h>
#include <utility>

namespace coilbook {

namespace {

/// Makes sure that a rename within the folder outlasts a power cut. A file system that cannot do
/// that is no reason to fail: the file itself is complete either way.
void syncFolder(const QString& folder) {
    const int descriptor =
        ::open(QFile::encodeName(folder).constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor >= 0) {
        ::fsync(descriptor);
        ::close(descriptor);
    }
}

bool isTaken(const QString& path) {
    const QFileInfo info(path);
    return info.exists() || info.isSymLink();
}

/// Renames unless the new name is taken. Some file systems do not know that in one step.
int renameWithoutReplacing(const QByteArray& from, const QByteArray& to) {
    if (::renameat2(AT_FDCWD, from.constData(), AT_FDCWD, to.constData(), RENAME_NOREPLACE) == 0) {
        return 0;
    }
    if (errno != EINVAL && errno != ENOSYS) {
        return errno;
    }
    if (isTaken(QFile::decodeName(to))) {
        return EEXIST;
    }
    return std::rename(from.constData(), to.constData()) == 0 ? 0 : errno;
}

} // namespace

Result<StagedFile> StagedFile::forNew(const QString& target) {
    if (isTaken(target)) {
        return fail(StorageFault::AlreadyExists, {}, target);
    }
    const QFileInfo info(target);
    if (!info.absoluteDir().exists()) {
        return fail(StorageFault::CannotWriteOutput,
                    {QString::fromLocal8Bit(std::strerror(ENOENT))}, target);
    }
    const QString name = QStringLiteral(".%1.%2.new")
                             .arg(info.fileName(), makeUuid7().toString(QUuid::WithoutBraces));
    return StagedFile(target, info.absoluteDir().filePath(name));
}

StagedFile::StagedFile(QString target, QString path)
    : m_target(std::move(target))
    , m_path(std::move(path)) {}

StagedFile::StagedFile(StagedFile&& other) noexcept
    : m_target(std::move(other.m_target))
    , m_path(std::exchange(other.m_path, {})) {}

StagedFile::~StagedFile() {
    if (!m_path.isEmpty()) {
        QFile::remove(m_path);
        QFile::remove(m_path + QStringLiteral("-journal"));
    }
}

Error StagedFile::named(Error error) const {
    if (error.file == m_path) {
        error.file = m_target;
    }
    return error;
}

Result<void> StagedFile::commit() {
    const int error =
        renameWithoutReplacing(QFile::encodeName(m_path), QFile::encodeName(m_target));
    if (error == EEXIST) {
        return fail(StorageFault::AlreadyExists, {}, m_target);
    }
    if (error != 0) {
        return fail(StorageFault::CannotWriteOutput, {QString::fromLocal8Bit(std::strerror(error))},
                    m_target);
    }
    m_path.clear();
    syncFolder(QFileInfo(m_target).absolutePath());
    return {};
}

} // namespace coilbook
