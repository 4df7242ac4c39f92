#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/support/error.h"
#include "core/support/result.h"

#include <QDate>

#include <optional>
#include <set>
#include <vector>

namespace coilbook {

/// What has been entered and is not in the logbook on the disk yet: it is kept on this computer and
/// put into the logbook as soon as that can be written to.
struct Waiting {
    int readings = 0;
    int others = 0;           ///< further entries: rounds, swaps, corrections …
    int refused = 0;          ///< entries that the logbook would not take; kept, not tried again
    std::set<ReadingId> ids;  ///< of the readings, corrections among them
    std::optional<Error> why; ///< what stands between them and the logbook
    QString refusal;          ///< the sentence that went with the newest refused entry

    [[nodiscard]] bool isEmpty() const { return readings == 0 && others == 0; }

    bool operator==(const Waiting&) const = default;
};

[[nodiscard]] inline bool isFault(const Error& error, StorageFault fault) {
    return error.fault == decltype(error.fault)(fault);
}

/// Whether an entry that failed this way may wait for better times: the logbook cannot be written
/// to just now. A rule that it breaks, or a bug, is not of that kind.
[[nodiscard]] bool mayWait(const Error& error);

/// The log as it will be once these changes are in the logbook; what is there already is not there
/// twice. Changes of other engines leave it alone.
[[nodiscard]] EngineLog withChanges(EngineLog log, const std::vector<Change>& changes);

/// The rules of a logbook on a log that holds changes which the logbook itself has not seen.
[[nodiscard]] Result<void> checkWaiting(const EngineLog& log, const std::vector<Change>& changes,
                                        const QDate& today);

/// Counts the changes into `waiting`.
void count(const std::vector<Change>& changes, Waiting& waiting);

/// The new readings among the changes as records of readings.csv, without the header, told by a log
/// that holds them.
[[nodiscard]] QString readingsAsRows(const EngineLog& log, const std::vector<Change>& changes);

} // namespace coilbook
