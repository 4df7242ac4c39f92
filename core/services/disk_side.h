#pragma once

#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/services/waiting_room.h"
#include "core/storage/logbook_lock.h"
#include "core/storage/logbook_store.h"
#include "core/storage/salvage.h"

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
    Waiting waiting;               ///< in log and history, and not on the logbook's disk yet
};

/// What a look at the disk now and then brings to light.
struct DiskNews {
    std::optional<LogbookSnapshot> fresh; ///< something has changed
    bool isFree = false; ///< open for reading only, and whoever held the logbook has closed it
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
        : m_clock(clock)
        , m_room(clock) {}

    /// Opens (or first makes) the logbook; the one open before stays open on failure. Held by
    /// another window or not writable: opened for reading only. What waits for it goes in first.
    [[nodiscard]] Result<LogbookSnapshot> open(const QString& path);
    [[nodiscard]] Result<LogbookSnapshot> create(const QString& path);
    [[nodiscard]] Result<LogbookSnapshot> createDemo(const QString& path);
    void close();

    /// Empty when none is open. It stays open while its file is out of reach.
    [[nodiscard]] const QString& path() const { return m_path; }

    [[nodiscard]] bool isReadOnly() const { return m_store.has_value() && m_readOnlyWhy; }

    /// Why it can only be read; empty when it can be written to.
    [[nodiscard]] const std::optional<Error>& readOnlyWhy() const { return m_readOnlyWhy; }

    [[nodiscard]] Result<LogbookSnapshot> select(const EngineId& engine);
    /// All changes in one transaction, then what the disk holds now. While the logbook cannot be
    /// written to, they wait on this computer instead, and the snapshot says so.
    [[nodiscard]] Result<LogbookSnapshot> apply(const std::vector<Change>& changes);
    [[nodiscard]] Result<LogbookSnapshot> reload();
    [[nodiscard]] Result<void> saveDraft(const Draft& draft);
    [[nodiscard]] Result<void> clearDraft();

    /// Tries to put in what waits, and looks whether somebody else has changed the logbook.
    [[nodiscard]] DiskNews lookAround();

    [[nodiscard]] WaitingRoom& room() { return m_room; }

    void setBackupPlaces(const BackupPlaces& places) { m_places = places; }

    /// Something other than by apply() was written.
    void noteWritten() { m_writtenSinceBackup = true; }

    /// Backs up when enough readings have come in since the last time.
    [[nodiscard]] Result<void> backUpWhenDue();

    /// The open logbook; null when none is, or when its file is out of reach. For jobs that need
    /// more than the above.
    [[nodiscard]] LogbookStore* store();

private:
    /// A logbook with what goes with it.
    struct Opened {
        LogbookStore store;
        std::optional<LogbookLock> lock;
        std::optional<Error> readOnlyWhy;
        std::optional<Salvaged> salvaged; ///< what `store` shows in place of a damaged file
    };

    [[nodiscard]] static Result<Opened> openFile(const QString& path);
    /// What can be read of a damaged file; `damage` if that is nothing.
    [[nodiscard]] static Result<Opened> openDamaged(const QString& path, const Error& damage);
    /// Damage has come to light in the open file: from here on it is only read.
    [[nodiscard]] Result<LogbookSnapshot> stopWriting(const Error& damage);
    [[nodiscard]] Result<LogbookSnapshot> take(const QString& path, Opened opened);
    [[nodiscard]] Result<LogbookSnapshot> read() const;
    [[nodiscard]] LogbookSnapshot withWaiting(LogbookSnapshot snapshot) const;
    /// The changes wait, because of that.
    [[nodiscard]] Result<LogbookSnapshot> wait(const std::vector<Change>& changes,
                                               const Error& why);
    /// Whether all that waited could go in, or at least some of it.
    bool tryAgain();
    /// The connection anew after its file failed.
    [[nodiscard]] Result<void> reopen();
    [[nodiscard]] Result<void> backUpNow();

    const Clock& m_clock;
    BackupPlaces m_places;
    bool m_writtenSinceBackup = false;
    int m_readingsSinceBackup = 0;
    QString m_path;
    std::optional<Error> m_readOnlyWhy;
    std::optional<LogbookLock> m_lock;
    std::optional<Salvaged> m_salvaged; ///< its folder must outlive the store
    std::optional<LogbookStore> m_store;
    EngineId m_engine;
    LogbookSnapshot m_stored; ///< as the disk had it last
    qint64 m_version = 0;     ///< of the file when it was read last, to see changes of others
    WaitingRoom m_room;
};

} // namespace coilbook
