// The part of the file's side that goes on while the logbook is out of reach; see disk_side.h.
#include "core/services/disk_side.h"

#include <algorithm>
#include <utility>

namespace coilbook {

Result<LogbookSnapshot> DiskSide::wait(const std::vector<Change>& changes, const Error& why) {
    const bool isKnown = m_stored.log && m_stored.log->engine.id == m_engine;
    const bool makesEngine = std::any_of(changes.begin(), changes.end(), [](const Change& change) {
        return std::holds_alternative<AddEngine>(change);
    });
    if (!isKnown || makesEngine) {
        return tl::unexpected(why);
    }
    std::vector<Change> all = m_room.changes();
    all.insert(all.end(), changes.begin(), changes.end());
    const EngineLog log = withChanges(*m_stored.log, all);
    Result<void> kept = checkWaiting(log, changes, m_clock.today()).and_then([&] {
        return m_room.keep(log, changes, why);
    });
    if (!kept) {
        return tl::unexpected(kept.error());
    }
    return withWaiting(m_stored);
}

Result<void> DiskSide::reopen() {
    m_store.reset();
    if (m_lock && !m_lock->isStanding()) {
        m_lock->abandon();
        m_lock.reset();
    }
    if (!m_lock) {
        Result<LogbookLock> lock = LogbookLock::acquire(m_path);
        if (!lock) {
            return tl::unexpected(lock.error());
        }
        m_lock = std::move(*lock);
    }
    Result<LogbookStore> store = LogbookStore::open(m_path, OpenMode::ReadWrite);
    if (!store) {
        return tl::unexpected(store.error());
    }
    // What lies there now may be another logbook, or one that is damaged.
    if (const Result<EngineLog> known = store->engineLog(m_engine); !known) {
        return mayWait(known.error()) ? Result<void>(tl::unexpected(known.error()))
                                      : fail(StorageFault::Vanished, {}, m_path);
    }
    if (isFault(*m_room.why(), StorageFault::Damaged)) {
        const Result<VerifyReport> report = store->verify();
        if (!report || !report->isIntact()) {
            return tl::unexpected(*m_room.why());
        }
    }
    m_store.emplace(std::move(*store));
    return {};
}

bool DiskSide::tryAgain() {
    const Error why = *m_room.why();
    const bool fileIsSound =
        isFault(why, StorageFault::Locked) || isFault(why, StorageFault::DiskFull);
    if (!m_store || !fileIsSound) {
        if (const Result<void> opened = reopen(); !opened) {
            m_room.setWhy(opened.error());
            return false;
        }
    }
    const int put = m_room.putInto(*m_store);
    if (put > 0) {
        m_writtenSinceBackup = true;
        m_readingsSinceBackup += put;
    }
    if (!m_engine.isNull() && m_room.isEmpty()) {
        if (const std::optional<Draft> draft = m_room.draftOf(m_engine)) {
            if (m_store->saveDraft(*draft)) {
                m_room.forgetDraft(m_engine);
            }
        }
    }
    return put > 0;
}

DiskNews DiskSide::lookAround() {
    DiskNews news;
    if (m_path.isEmpty() || m_salvaged) {
        return news;
    }
    bool isNew = false;
    if (!m_readOnlyWhy) {
        const Waiting before = m_room.summary();
        if (!m_room.isEmpty() && m_room.why()) {
            tryAgain();
        }
        isNew = m_room.summary() != before;
    } else if (m_store) {
        news.isFree =
            isFault(*m_readOnlyWhy, StorageFault::HeldByWindow) && LogbookLock::isFree(m_path);
        const Result<qint64> version = m_store->dataVersion();
        isNew = version && *version != m_version;
    }
    if (isNew) {
        if (Result<LogbookSnapshot> fresh = reload()) {
            news.fresh = std::move(*fresh);
        }
    }
    return news;
}

Result<void> DiskSide::saveDraft(const Draft& draft) {
    if (m_path.isEmpty() || isReadOnly()) {
        return {};
    }
    const bool isOutOfReach = !m_store || !m_room.isEmpty();
    Result<void> saved =
        isOutOfReach ? fail(StorageFault::Missing, {}, m_path) : m_store->saveDraft(draft);
    if (saved) {
        m_room.forgetDraft(draft.engine);
        return saved;
    }
    if (!mayWait(saved.error())) {
        return saved;
    }
    return m_room.keepDraft(draft).map_error([&](const Error&) { return saved.error(); });
}

Result<void> DiskSide::clearDraft() {
    if (m_path.isEmpty() || m_engine.isNull() || isReadOnly()) {
        return {};
    }
    m_room.forgetDraft(m_engine);
    return m_store && m_room.isEmpty() ? m_store->clearDraft(m_engine) : Result<void>();
}

} // namespace coilbook
