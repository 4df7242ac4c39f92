#include "core/exchange/output_set.h"

#include <QDir>
#include <QFileInfo>
#include <QUuid>

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <system_error>
#include <unistd.h>

namespace coilbook {

namespace {

constexpr qsizetype kBufferSize = 1 << 16;

QString systemSays() {
    return QString::fromLocal8Bit(std::strerror(errno));
}

QString passingName(const QString& target) {
    const QFileInfo info(target);
    return info.dir().filePath(
        QStringLiteral(".%1.%2.part")
            .arg(info.fileName(), QUuid::createUuid().toString(QUuid::Id128)));
}

/// Makes the names in a folder last beyond a power cut. Where a file system cannot do that, the
/// files are there all the same.
void syncFolder(const QString& folder) {
    const int handle = ::open(QFile::encodeName(folder).constData(), O_RDONLY | O_DIRECTORY);
    if (handle >= 0) {
        ::fsync(handle);
        ::close(handle);
    }
}

} // namespace

OutputFile::OutputFile(QString target)
    : m_target(std::move(target))
    , m_file(passingName(m_target)) {
    if (QFileInfo(m_target).exists() && !QFileInfo(m_target).isFile()) {
        failWith(QString::fromLocal8Bit(std::strerror(EISDIR)));
    } else if (!m_file.open(QIODevice::WriteOnly | QIODevice::NewOnly | QIODevice::Unbuffered)) {
        failWith(m_file.errorString());
    }
}

OutputFile::~OutputFile() {
    if (m_file.isOpen()) {
        m_file.close();
    }
    if (!m_renamed && m_file.exists()) {
        m_file.remove();
    }
}

void OutputFile::write(QByteArrayView bytes) {
    m_buffer.append(bytes);
    if (m_buffer.size() >= kBufferSize) {
        flush();
    }
}

/// A full disk may cut a write short without an error, so its length is compared.
void OutputFile::flush() {
    if (m_failure.isEmpty() && m_file.write(m_buffer) != m_buffer.size()) {
        failWith(m_file.errorString());
    }
    m_written += m_buffer.size();
    m_buffer.clear();
}

void OutputFile::failWith(const QString& what) {
    m_failure = m_failure.isEmpty() ? what : m_failure;
}

Result<void> OutputFile::finish() {
    flush();
    if (m_failure.isEmpty() && ::fsync(m_file.handle()) != 0) {
        failWith(systemSays());
    }
    if (m_failure.isEmpty() && m_file.size() != m_written) {
        failWith(QString::fromLocal8Bit(std::strerror(ENOSPC)));
    }
    if (!m_failure.isEmpty()) {
        return fail(StorageFault::CannotWriteOutput, {m_failure}, m_target);
    }
    m_file.close();
    return {};
}

Result<void> OutputFile::rename() {
    std::error_code code;
    std::filesystem::rename(QFile::encodeName(m_file.fileName()).toStdString(),
                            QFile::encodeName(m_target).toStdString(), code);
    if (code) {
        return fail(StorageFault::CannotWriteOutput, {QString::fromStdString(code.message())},
                    m_target);
    }
    m_renamed = true;
    return {};
}

OutputSet::OutputSet(const QString& folder)
    : m_folder(folder) {
    m_madeFolder = !QFileInfo::exists(folder) && QDir().mkdir(folder);
}

OutputSet::~OutputSet() {
    m_files.clear();
    if (m_madeFolder) {
        QDir().rmdir(m_folder);
    }
}

OutputFile& OutputSet::add(const QString& name) {
    return *m_files.emplace_back(std::make_unique<OutputFile>(QDir(m_folder).filePath(name)));
}

Result<void> OutputSet::commit() {
    for (const auto& file : m_files) {
        if (Result<void> finished = file->finish(); !finished) {
            return finished;
        }
    }
    for (const auto& file : m_files) {
        if (Result<void> renamed = file->rename(); !renamed) {
            return renamed;
        }
    }
    syncFolder(m_folder);
    m_madeFolder = false;
    return {};
}

} // namespace coilbook
