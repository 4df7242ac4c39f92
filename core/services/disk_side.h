#pragma once

#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/storage/logbook_lock.h"
#include "core/storage/logbook_store.h"

#include <memory>
#include <optional>
#include <vector>

namespace coilbook {

/// What a job on the disk brings back: values that nobody alters any more.
struct LogbookSnapshot {
    std::vector<EngineSummary> engines;
    std::vector<Tester> testers;
    std::vector<Calibration> calibrations;   ///< of all testers, by day
    std::vector<RepeatabilityStudy> studies; ///< likewise
    std::shared_ptr<const EngineLog> log;    ///< null: no engine selected
    std::shared_ptr<const EngineHistory> history;
    std::optional<Draft> draft;
    std::optional<NotedSeal> seal; ///< the newest over that engine's data
};

/// Where automatic backups are kept. An empty folder: not there.
struct BackupPlaces {
    QString ownFolder; ///< on this machine's disk, for a logbook that is on another (a stick, say)
    QString second;    ///< used besides, whenever it is there
    bool wanted = false;
};

/// The file's side of a session: lives in the disk's thread and is touched by its jobs alone.
class DiskSide {
public:
    explicit DiskSide(const Clock& clock)
        : m_clock(clock) {}

    /// Opens (or first makes) the logbook; the one open before stays open on failure. Held by
    /// another window or not writable: opened for reading only.
    [[nodiscard]] Result<LogbookSnapshot> open(const QString& path);
    [[nodiscard]] Result<LogbookSnapshot> create(const QString& path);
    [[nodiscard]] Result<LogbookSnapshot> createDemo(const QString& path);
    void close();

    [[nodiscard]] bool isReadOnly() const;

    [[nodiscard]] Result<LogbookSnapshot> select(const EngineId& engine);
    /// All changes in one transaction, then what the disk holds now.
    [[nodiscard]] Result<LogbookSnapshot> apply(const std::vector<Change>& changes);
    [[nodiscard]] Result<LogbookSnapshot> reload() const;
    [[nodiscard]] Result<void> saveDraft(const Draft& draft);
    [[nodiscard]] Result<void> clearDraft();

    void setBackupPlaces(const BackupPlaces& places) { m_places = places; }

    /// Something other than by apply() was written.
    void noteWritten() { m_writtenSinceBackup = true; }

    /// Backs up when enough readings have come in since the last time.
    [[nodiscard]] Result<void> backUpWhenDue();

    /// The open logbook; null when none is. For jobs that need more than the above.
    [[nodiscard]] LogbookStore* store();

private:
    [[nodiscard]] Result<LogbookSnapshot> take(LogbookStore store, std::optional<LogbookLock> lock);
    [[nodiscard]] Result<void> backUpNow();

    const Clock& m_clock;
    BackupPlaces m_places;
    bool m_writtenSinceBackup = false;
    int m_readingsSinceBackup = 0;
    std::optional<LogbookLock> m_lock;
    std::optional<LogbookStore> m_store;
    EngineId m_engine;
};

} // namespace coilbook
