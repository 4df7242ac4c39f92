#include "core/storage/logbook_lock.h"

#include <QFileInfo>

namespace coilbook {

Result<LogbookLock> LogbookLock::acquire(const QString& logbook) {
    // Two names of one file must lead to one lock.
    const QFileInfo info(logbook);
    const QString real = info.exists() ? info.canonicalFilePath() : info.absoluteFilePath();
    auto file = std::make_unique<QLockFile>(real + QStringLiteral(".lock"));
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
    return fail(StorageFault::HeldByWindow, {program, host, QString::number(process)}, logbook);
}

} // namespace coilbook
