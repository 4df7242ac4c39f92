#include "core/services/waiting_room.h"

#include "core/exchange/observation_export.h"
#include "core/wording/wording.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace coilbook {

void WaitingRoom::useSpool(const QString& file) {
    if (Result<Spool> spool = Spool::open(file)) {
        m_spool.emplace(std::move(*spool));
    }
}

void WaitingRoom::enter(const QString& logbook) {
    leave();
    m_logbook = logbook;
    if (!m_spool) {
        return;
    }
    Result<std::vector<WaitingEntry>> entries = m_spool->entriesOf(logbook);
    if (!entries) {
        m_summary.refused = 1;
        m_summary.refusal = wording::sentence(entries.error());
        return;
    }
    for (WaitingEntry& entry : *entries) {
        (entry.refused.isEmpty() ? m_entries : m_refused).push_back(std::move(entry));
    }
    recount();
}

void WaitingRoom::leave() {
    m_logbook.clear();
    m_entries.clear();
    m_refused.clear();
    m_summary = {};
}

std::vector<Change> WaitingRoom::changes() const {
    std::vector<Change> all;
    for (const WaitingEntry& entry : m_entries) {
        std::copy(entry.changes.begin(), entry.changes.end(), std::back_inserter(all));
    }
    return all;
}

Result<void> WaitingRoom::keep(const EngineLog& log, const std::vector<Change>& changes,
                               const Error& why) {
    if (!m_spool) {
        return tl::unexpected(why);
    }
    WaitingEntry entry{0, changes, readingsAsRows(log, changes), m_clock.now(), {}};
    const Result<qint64> number = m_spool->keep(m_logbook, entry);
    if (!number) {
        return tl::unexpected(number.error());
    }
    entry.number = *number;
    m_entries.push_back(std::move(entry));
    m_summary.why = why;
    recount();
    return {};
}

int WaitingRoom::putInto(LogbookStore& store) {
    int put = 0;
    while (!m_entries.empty()) {
        WaitingEntry& entry = m_entries.front();
        const Result<void> applied = store.applyAll(entry.changes, m_clock);
        if (!applied && mayWait(applied.error())) {
            m_summary.why = applied.error();
            break;
        }
        if (applied) {
            // Should this fail, the entry is put in once more some day, which changes nothing.
            [[maybe_unused]] const Result<void> forgotten = m_spool->forget(entry.number);
            ++put;
        } else {
            entry.refused = wording::sentence(applied.error());
            [[maybe_unused]] const Result<void> marked =
                m_spool->markRefused(entry.number, entry.refused);
            m_refused.push_back(entry);
        }
        m_entries.erase(m_entries.begin());
    }
    if (m_entries.empty()) {
        m_summary.why.reset();
    }
    recount();
    return put;
}

void WaitingRoom::recount() {
    Waiting fresh;
    for (const WaitingEntry& entry : m_entries) {
        count(entry.changes, fresh);
    }
    fresh.refused = static_cast<int>(m_refused.size());
    fresh.why = m_summary.why;
    fresh.refusal = m_refused.empty() ? QString() : m_refused.back().refused;
    m_summary = std::move(fresh);
}

Result<void> WaitingRoom::keepDraft(const Draft& draft) {
    return m_spool ? m_spool->keepDraft(m_logbook, draft) : fail(StorageFault::Missing);
}

std::optional<Draft> WaitingRoom::draftOf(const EngineId& engine) const {
    return m_spool ? m_spool->draftOf(m_logbook, engine).value_or(std::nullopt) : std::nullopt;
}

void WaitingRoom::forgetDraft(const EngineId& engine) {
    if (m_spool) {
        // A draft that stays is offered once more, which does no harm.
        [[maybe_unused]] const Result<void> forgotten = m_spool->forgetDraft(m_logbook, engine);
    }
}

Result<QByteArray> WaitingRoom::readingsCsv(const QString& logbook) const {
    if (!m_spool) {
        return QByteArray();
    }
    const Result<std::vector<WaitingEntry>> entries = m_spool->entriesOf(logbook);
    if (!entries) {
        return tl::unexpected(entries.error());
    }
    QByteArray text;
    CsvWriter csv([&text](QByteArrayView piece) { text += piece; });
    writeHeader(csv, ExchangeKind::Readings);
    for (const WaitingEntry& entry : *entries) {
        text += entry.readings.toUtf8();
    }
    return text;
}

Result<void> WaitingRoom::forgetRefused() {
    for (const WaitingEntry& entry : std::exchange(m_refused, {})) {
        if (Result<void> forgotten = m_spool->forget(entry.number); !forgotten) {
            return forgotten;
        }
    }
    recount();
    return {};
}

Waiting WaitingRoom::waitingFor(const QString& logbook) const {
    Waiting found;
    if (!m_spool) {
        return found;
    }
    const Result<std::vector<WaitingEntry>> entries = m_spool->entriesOf(logbook);
    if (entries) {
        for (const WaitingEntry& entry : *entries) {
            if (entry.refused.isEmpty()) {
                count(entry.changes, found);
            } else {
                ++found.refused;
            }
        }
    }
    return found;
}

} // namespace coilbook
