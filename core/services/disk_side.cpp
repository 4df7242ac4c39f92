#include "core/services/disk_side.h"

#include "core/demo/demo.h"
#include "core/storage/rolling_backups.h"
#include "core/wording/findings.h"

#include <QDir>
#include <QFileInfo>
#include <QStorageInfo>

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

/// Readings after which a backup is made without waiting for the end of the work.
constexpr int kReadingsPerBackup = 50;

/// A logbook up to this size is checked whole before it is shown; a larger one when it is backed
/// up.
constexpr qint64 kCheckedAtOnce = 4 * 1024 * 1024;

int readingsIn(const std::vector<Change>& changes) {
    std::size_t count = 0;
    for (const Change& change : changes) {
        if (const auto* recorded = std::get_if<RecordReadings>(&change)) {
            count += recorded->readings.size();
        }
    }
    return static_cast<int>(count);
}

/// Pages that do not hold, or rows that do not match their checksum. What else a check may find is
/// for people to judge and no reason to stop writing.
std::optional<Error> damageIn(const LogbookStore& store) {
    const Result<VerifyReport> report = store.verify();
    if (!report) {
        return std::nullopt; // locked, say; reading will tell
    }
    for (const Finding& finding : report->findings) {
        if (finding.kind == FindingKind::Page || finding.kind == FindingKind::Checksum) {
            return Error{
                StorageFault::Damaged, {wording::findingLine(finding)}, store.path(), 0, {}, 0, {}};
        }
    }
    return std::nullopt;
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

Result<DiskSide::Opened> DiskSide::openFile(const QString& path) {
    Result<LogbookLock> lock = LogbookLock::acquire(path);
    std::optional<Error> why;
    if (!lock) {
        const bool mayStillRead = isFault(lock.error(), StorageFault::HeldByWindow) ||
                                  isFault(lock.error(), StorageFault::ReadOnly) ||
                                  isFault(lock.error(), StorageFault::NoPermission);
        if (!mayStillRead) {
            return tl::unexpected(lock.error());
        }
        why = lock.error();
    }
    Result<LogbookStore> store =
        LogbookStore::open(path, lock ? OpenMode::ReadWrite : OpenMode::ReadOnly);
    if (!store && lock &&
        (isFault(store.error(), StorageFault::ReadOnly) ||
         isFault(store.error(), StorageFault::NewerVersion))) {
        why = store.error();
        store = LogbookStore::open(path, OpenMode::ReadOnly);
    }
    if (!store) {
        return isFault(store.error(), StorageFault::Damaged) ? openDamaged(path, store.error())
                                                             : tl::unexpected(store.error());
    }
    if (QFileInfo(path).size() <= kCheckedAtOnce) {
        if (const std::optional<Error> damage = damageIn(*store)) {
            return openDamaged(path, *damage);
        }
    }
    return Opened{std::move(*store), lock ? std::optional(std::move(*lock)) : std::nullopt,
                  std::move(why), std::nullopt};
}

Result<DiskSide::Opened> DiskSide::openDamaged(const QString& path, const Error& damage) {
    Result<Salvaged> readable = salvage(path);
    if (!readable) {
        return tl::unexpected(damage);
    }
    Result<LogbookStore> store = LogbookStore::open(readable->path, OpenMode::ReadOnly);
    if (!store) {
        return tl::unexpected(damage);
    }
    return Opened{std::move(*store), std::nullopt, damage, std::move(*readable)};
}

Result<LogbookSnapshot> DiskSide::stopWriting(const Error& damage) {
    Result<Opened> opened = openDamaged(m_path, damage);
    if (!opened) {
        return tl::unexpected(damage);
    }
    m_store.emplace(std::move(opened->store));
    m_salvaged = std::move(opened->salvaged);
    m_readOnlyWhy = damage;
    if (!m_room.isEmpty()) {
        m_room.setWhy(damage);
    }
    Result<LogbookSnapshot> readable = read();
    if (readable) {
        m_stored = *readable;
    }
    return readable.map([this](const LogbookSnapshot& snapshot) { return withWaiting(snapshot); });
}

Result<LogbookSnapshot> DiskSide::open(const QString& path) {
    if (path == m_path && m_lock && !m_readOnlyWhy) {
        return reload(); // nobody else can have it meanwhile
    }
    if (path == m_path) {
        m_lock.reset(); // to be taken anew, now that it may be written to
    }
    Result<Opened> opened = openFile(path);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    return take(path, std::move(*opened));
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
    return take(path, {std::move(*store), std::move(*lock), std::nullopt, std::nullopt});
}

Result<LogbookSnapshot> DiskSide::createDemo(const QString& path) {
    if (const Result<void> written = writeDemo(path, m_clock); !written) {
        return tl::unexpected(written.error());
    }
    return open(path);
}

Result<LogbookSnapshot> DiskSide::take(const QString& path, Opened opened) {
    close();
    m_path = path;
    m_salvaged = std::move(opened.salvaged);
    m_store.emplace(std::move(opened.store));
    m_lock = std::move(opened.lock);
    m_readOnlyWhy = std::move(opened.readOnlyWhy);
    m_writtenSinceBackup = false;
    m_readingsSinceBackup = 0;
    // While another window has the logbook, what waits for it is that window's to put in.
    if (!m_readOnlyWhy || !isFault(*m_readOnlyWhy, StorageFault::HeldByWindow)) {
        m_room.enter(m_path);
    }
    if (!m_readOnlyWhy) {
        if (m_room.putInto(*m_store) > 0) {
            m_writtenSinceBackup = true;
        }
    } else if (!m_room.isEmpty()) {
        m_room.setWhy(*m_readOnlyWhy);
    }
    return reload();
}

Result<void> DiskSide::backUpWhenDue() {
    return m_readingsSinceBackup >= kReadingsPerBackup ? backUpNow() : Result<void>();
}

Result<void> DiskSide::backUpNow() {
    if (!m_places.wanted || !m_writtenSinceBackup || !m_store || isReadOnly()) {
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
    m_salvaged.reset();
    if (m_lock && !m_lock->isStanding()) {
        m_lock->abandon();
    }
    m_lock.reset();
    m_readOnlyWhy.reset();
    m_path.clear();
    m_room.leave();
    m_stored = {};
    m_engine = {};
}

Result<LogbookSnapshot> DiskSide::select(const EngineId& engine) {
    const EngineId before = std::exchange(m_engine, engine);
    Result<LogbookSnapshot> selected = reload();
    if (!selected) {
        m_engine = before;
    }
    return selected;
}

Result<LogbookSnapshot> DiskSide::read() const {
    if (!m_store) {
        return fail(StorageFault::Missing, {}, m_path);
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

Result<LogbookSnapshot> DiskSide::reload() {
    if (m_path.isEmpty()) {
        return LogbookSnapshot{};
    }
    if (m_store) {
        // Before reading: a change that comes between is then seen as one.
        m_version = m_store->dataVersion().value_or(m_version);
    }
    const Result<LogbookSnapshot> fresh = read();
    if (fresh) {
        m_stored = *fresh;
        return withWaiting(m_stored);
    }
    m_version = 0; // so that it is tried again
    if (isFault(fresh.error(), StorageFault::Damaged) && !m_readOnlyWhy) {
        return stopWriting(fresh.error());
    }
    const bool isKnown = m_stored.log && m_stored.log->engine.id == m_engine;
    if (isKnown && mayWait(fresh.error()) && (m_room.why() || !m_store)) {
        return withWaiting(m_stored); // as it was before the disk went away
    }
    return tl::unexpected(fresh.error());
}

LogbookSnapshot DiskSide::withWaiting(LogbookSnapshot snapshot) const {
    snapshot.waiting = m_room.summary();
    if (!snapshot.log) {
        return snapshot;
    }
    if (std::optional<Draft> draft = m_room.draftOf(m_engine)) {
        snapshot.draft = std::move(draft);
    }
    if (!m_room.isEmpty()) {
        EngineLog log = withChanges(*snapshot.log, m_room.changes());
        snapshot.testers = log.testers;
        snapshot.calibrations = log.calibrations;
        snapshot.studies = log.studies;
        snapshot.history = std::make_shared<const EngineHistory>(historyOf(log));
        snapshot.log = std::make_shared<const EngineLog>(std::move(log));
    }
    return snapshot;
}

Result<LogbookSnapshot> DiskSide::apply(const std::vector<Change>& changes) {
    if (m_path.isEmpty()) {
        return fail(StorageFault::Missing);
    }
    if (!m_room.isEmpty() && m_room.why()) {
        return wait(changes, *m_room.why()); // behind what waits already
    }
    const Result<void> applied =
        m_store ? m_store->applyAll(changes, m_clock) : fail(StorageFault::Missing, {}, m_path);
    if (!applied) {
        return mayWait(applied.error()) && !isReadOnly()
                   ? wait(changes, applied.error())
                   : Result<LogbookSnapshot>(tl::unexpected(applied.error()));
    }
    m_writtenSinceBackup = true;
    m_readingsSinceBackup += readingsIn(changes);
    Result<LogbookSnapshot> fresh = reload();
    if (!fresh && m_stored.log) {
        // It is on the disk, and the disk cannot be read just now.
        LogbookSnapshot told = m_stored;
        told.log = std::make_shared<const EngineLog>(withChanges(*m_stored.log, changes));
        told.history = std::make_shared<const EngineHistory>(historyOf(*told.log));
        m_stored = told;
        return told;
    }
    return fresh;
}

LogbookStore* DiskSide::store() {
    return m_store ? &*m_store : nullptr;
}

} // namespace coilbook
