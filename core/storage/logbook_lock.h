#pragma once

#include "core/support/result.h"

#include <QLockFile>
#include <QString>

#include <memory>

namespace coilbook {

/// Says to other instances, by a file `LOGBOOK.lock` beside the logbook, that this one works on it:
/// a window while the logbook is open, an import while it runs. It does not lock the database, so
/// reading and copying go on. Given back when destroyed; the lock of a process of this machine that
/// died is taken over, one that another machine has put there never is.
class LogbookLock {
public:
    /// StorageFault::HeldByWindow names the holder: program, host, process id. ReadOnly: the lock
    /// file cannot be made there, and nobody can write to the logbook either.
    [[nodiscard]] static Result<LogbookLock> acquire(const QString& logbook);

private:
    explicit LogbookLock(std::unique_ptr<QLockFile> file)
        : m_file(std::move(file)) {}

    std::unique_ptr<QLockFile> m_file;
};

} // namespace coilbook
