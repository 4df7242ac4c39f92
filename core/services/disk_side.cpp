#include "core/services/disk_side.h"

#include "core/demo/demo.h"
#include "core/storage/rolling_backups.h"

#include <QDir>
#include <QFileInfo>
#include <QStorageInfo>

namespace coilbook {

namespace {

bool is(const Error& error, StorageFault fault) {
    return error.fault == decltype(error.fault)(fault);
}

/// Readings after which a backup is made without waiting for the end of the work.
constexpr int kReadingsPerBackup = 50;

int readingsIn(const std::vector<Change>& changes) {
    std::size_t count = 0;
    for (const Change& change : changes) {
        if (const auto* recorded = std::get_if<RecordReadings>(&change)) {
            count += recorded->readings.size();
        }
    }
    return static_cast<int>(count);
}

/// Beside the logbook, unless that is another device than this machine's own disk: what may be
/// pulled out or dropped must not hold the only copies.
QString firstPlace(const QString& logbook, const QString& ownFolder) {
    QString beside = QFileInfo(logbook).absolutePath();
    if (ownFolder.isEmpty() || !QDir().mkpath(ownFolder) ||
        QStorageInfo(beside).device() == QStorageInfo(ownFolder).device()) {
        return beside;
    }
    return ownFolder;
}

} // namespace

Result<LogbookSnapshot> DiskSide::open(const QString& path) {
    Result<LogbookLock> lock = LogbookLock::acquire(path);
    if (!lock) {
        const bool mayStillRead = is(lock.error(), StorageFault::HeldByWindow) ||
                                  is(lock.error(), StorageFault::ReadOnly) ||
                                  is(lock.error(), StorageFault::NoPermission);
        if (!mayStillRead) {
            return tl::unexpected(lock.error());
        }
    }
    Result<LogbookStore> store =
        LogbookStore::open(path, lock ? OpenMode::ReadWrite : OpenMode::ReadOnly);
    if (!store && lock &&
        (is(store.error(), StorageFault::ReadOnly) ||
         is(store.error(), StorageFault::NewerVersion))) {
        store = LogbookStore::open(path, OpenMode::ReadOnly);
    }
    if (!store) {
        return tl::unexpected(store.error());
    }
    return take(std::move(*store), lock ? std::optional(std::move(*lock)) : std::nullopt);
}

Result<LogbookSnapshot> DiskSide::create(const QString& path) {
    Result<LogbookStore> store = LogbookStore::create(path);
    if (!store) {
        return tl::unexpected(store.error());
    }
    Result<LogbookLock> lock = LogbookLock::acquire(path);
    if (!lock) {
        return tl::unexpected(lock.error());
    }
    return take(std::move(*store), std::move(*lock));
}

Result<LogbookSnapshot> DiskSide::createDemo(const QString& path) {
    if (const Result<void> written = writeDemo(path, m_clock); !written) {
        return tl::unexpected(written.error());
    }
    return open(path);
}

Result<LogbookSnapshot> DiskSide::take(LogbookStore store, std::optional<LogbookLock> lock) {
    close();
    m_store.emplace(std::move(store));
    m_lock = std::move(lock);
    m_writtenSinceBackup = false;
    m_readingsSinceBackup = 0;
    return reload();
}

Result<void> DiskSide::backUpWhenDue() {
    return m_readingsSinceBackup >= kReadingsPerBackup ? backUpNow() : Result<void>();
}

Result<void> DiskSide::backUpNow() {
    if (!m_places.wanted || !m_writtenSinceBackup || isReadOnly()) {
        return {};
    }
    m_readingsSinceBackup = 0; // also after a failure: it is tried again with the next readings
    const Moment now = m_clock.now();
    const QString logbook = m_store->path();
    const Result<QString> first =
        addBackup(*m_store, backupFolderIn(firstPlace(logbook, m_places.ownFolder), logbook), now);
    m_writtenSinceBackup = !first;
    Result<QString> second = first;
    if (QFileInfo(m_places.second).isDir()) {
        second = addBackup(*m_store, backupFolderIn(m_places.second, logbook), now);
    }
    return (first ? second : first).map([](const QString&) {});
}

void DiskSide::close() {
    // Nobody is left to be told of a failure, and the logbook itself is whole on the disk.
    [[maybe_unused]] const Result<void> backedUp = backUpNow();
    m_store.reset(); // the file first: nobody may get the lock while it is still open
    m_lock.reset();
    m_engine = {};
}

bool DiskSide::isReadOnly() const {
    return !m_store || m_store->mode() == OpenMode::ReadOnly;
}

Result<LogbookSnapshot> DiskSide::select(const EngineId& engine) {
    m_engine = engine;
    return reload();
}

Result<LogbookSnapshot> DiskSide::apply(const std::vector<Change>& changes) {
    if (!m_store) {
        return fail(StorageFault::Missing);
    }
    if (const Result<void> applied = m_store->applyAll(changes, m_clock); !applied) {
        return tl::unexpected(applied.error());
    }
    m_writtenSinceBackup = true;
    m_readingsSinceBackup += readingsIn(changes);
    return reload();
}

Result<LogbookSnapshot> DiskSide::reload() const {
    if (!m_store) {
        return LogbookSnapshot{};
    }
    LogbookSnapshot snapshot;
    Result<std::vector<EngineSummary>> engines = m_store->engines();
    if (!engines) {
        return tl::unexpected(engines.error());
    }
    snapshot.engines = std::move(*engines);
    Result<std::vector<Tester>> testers = m_store->testers();
    if (!testers) {
        return tl::unexpected(testers.error());
    }
    snapshot.testers = std::move(*testers);
    Result<std::vector<Calibration>> calibrations = m_store->calibrations();
    if (!calibrations) {
        return tl::unexpected(calibrations.error());
    }
    snapshot.calibrations = std::move(*calibrations);
    Result<std::vector<RepeatabilityStudy>> studies = m_store->studies();
    if (!studies) {
        return tl::unexpected(studies.error());
    }
    snapshot.studies = std::move(*studies);
    if (m_engine.isNull()) {
        return snapshot;
    }
    Result<EngineLog> log = m_store->engineLog(m_engine);
    if (!log) {
        return tl::unexpected(log.error());
    }
    Result<std::optional<Draft>> draft = m_store->draft(m_engine);
    if (!draft) {
        return tl::unexpected(draft.error());
    }
    snapshot.draft = std::move(*draft);
    const Result<std::optional<NotedSeal>> seal = m_store->newestSeal(m_engine);
    if (!seal) {
        return tl::unexpected(seal.error());
    }
    snapshot.seal = *seal;
    snapshot.log = std::make_shared<const EngineLog>(std::move(*log));
    snapshot.history = std::make_shared<const EngineHistory>(historyOf(*snapshot.log));
    return snapshot;
}

Result<void> DiskSide::saveDraft(const Draft& draft) {
    return m_store ? m_store->saveDraft(draft) : Result<void>();
}

Result<void> DiskSide::clearDraft() {
    return m_store && !m_engine.isNull() ? m_store->clearDraft(m_engine) : Result<void>();
}

LogbookStore* DiskSide::store() {
    return m_store ? &*m_store : nullptr;
}

} // namespace coilbook
