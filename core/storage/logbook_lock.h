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
    /// StorageFault::HeldByWindow names the holder: program, host, process id, user. ReadOnly: the
    /// lock file cannot be made there, and nobody can write to the logbook either.
    [[nodiscard]] static Result<LogbookLock> acquire(const QString& logbook);

    /// Whether nobody holds it: acquire() would succeed, as far as looking can tell.
    [[nodiscard]] static bool isFree(const QString& logbook);

    /// Whether its file is still there and says that we hold it. A stick that is pulled out takes
    /// the file away, and somebody else may have put theirs there since.
    [[nodiscard]] bool isStanding() const;

    /// Gives up a lock that no longer stands, without touching what lies at its place.
    void abandon();

private:
    explicit LogbookLock(std::unique_ptr<QLockFile> file)
        : m_file(std::move(file)) {}

    std::unique_ptr<QLockFile> m_file;
};

} // namespace coilbook
