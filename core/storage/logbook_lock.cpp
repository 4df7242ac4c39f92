#include "core/storage/logbook_lock.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QSysInfo>

#include <mutex>
#include <vector>

#ifdef Q_OS_UNIX
#include <cerrno>
#include <csignal>
#endif

namespace coilbook {

namespace {

QString lockFileOf(const QString& logbook) {
    // Two names of one file must lead to one lock.
    const QFileInfo info(logbook);
    const QString real = info.exists() ? info.canonicalFilePath() : info.absoluteFilePath();
    return real + QStringLiteral(".lock");
}

/// Whether a process of this machine has ended; what cannot be told counts as running.
bool hasEnded([[maybe_unused]] qint64 process) {
#ifdef Q_OS_UNIX
    return ::kill(static_cast<pid_t>(process), 0) != 0 && errno == ESRCH;
#else
    return false;
#endif
}

} // namespace

Result<LogbookLock> LogbookLock::acquire(const QString& logbook) {
    const QString path = lockFileOf(logbook);
    auto file = std::make_unique<QLockFile>(path);
    file->setStaleLockTime(0);
    if (file->tryLock(0)) {
        return LogbookLock(std::move(file));
    }
    if (file->error() != QLockFile::LockFailedError) {
        return fail(StorageFault::ReadOnly, {}, logbook);
    }
    qint64 process = 0;
    QString host;
    QString program;
    file->getLockInfo(&process, &host, &program);
    return fail(StorageFault::HeldByWindow,
                {program, host, QString::number(process), QFileInfo(path).owner()}, logbook);
}

bool LogbookLock::isFree(const QString& logbook) {
    const QString path = lockFileOf(logbook);
    if (!QFileInfo::exists(path)) {
        return QFileInfo::exists(logbook);
    }
    qint64 process = 0;
    QString host;
    QString program;
    const QLockFile file(path);
    return file.getLockInfo(&process, &host, &program) && host == QSysInfo::machineHostName() &&
           hasEnded(process);
}

bool LogbookLock::isStanding() const {
    qint64 process = 0;
    QString host;
    QString program;
    return m_file->getLockInfo(&process, &host, &program) &&
           process == QCoreApplication::applicationPid() && host == QSysInfo::machineHostName();
}

void LogbookLock::abandon() {
    // Unlocking would remove the file of whoever is there now, so this object is never destroyed.
    static std::mutex mutex;
    static auto* const abandoned = new std::vector<std::unique_ptr<QLockFile>>;
    const std::lock_guard guard(mutex);
    abandoned->push_back(std::move(m_file));
}

} // namespace coilbook
