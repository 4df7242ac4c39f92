#pragma once

#include "core/services/waiting.h"
#include "core/storage/logbook_store.h"
#include "core/storage/spool.h"

#include <optional>
#include <vector>

namespace coilbook {

/// What waits for one logbook, kept in the spool of this computer. Lives in the disk's thread.
class WaitingRoom {
public:
    explicit WaitingRoom(const Clock& clock)
        : m_clock(clock) {}

    /// Where entries are kept from now on; without a spool nothing can wait.
    void useSpool(const QString& file);

    /// Takes up what waits for that logbook, from an earlier run of the program too.
    void enter(const QString& logbook);
    void leave();

    /// Nothing waits that could go into the logbook.
    [[nodiscard]] bool isEmpty() const { return m_entries.empty(); }

    [[nodiscard]] const Waiting& summary() const { return m_summary; }

    [[nodiscard]] std::optional<Error> why() const { return m_summary.why; }

    void setWhy(const Error& why) { m_summary.why = why; }

    /// All that waits, in order.
    [[nodiscard]] std::vector<Change> changes() const;

    /// Keeps an entry on this computer's disk; `log` holds it already.
    [[nodiscard]] Result<void> keep(const EngineLog& log, const std::vector<Change>& changes,
                                    const Error& why);

    /// Puts the entries into the logbook, one after the other, until none is left or the logbook
    /// cannot be written to. An entry that breaks a rule is set apart. How many went in.
    int putInto(LogbookStore& store);

    [[nodiscard]] Result<void> keepDraft(const Draft& draft);
    [[nodiscard]] std::optional<Draft> draftOf(const EngineId& engine) const;
    void forgetDraft(const EngineId& engine);

    /// readings.csv of all readings that wait for that logbook, refused ones included.
    [[nodiscard]] Result<QByteArray> readingsCsv(const QString& logbook) const;

    /// Drops the entries that the logbook would not take.
    [[nodiscard]] Result<void> forgetRefused();

    /// How much waits for a logbook that is not open.
    [[nodiscard]] Waiting waitingFor(const QString& logbook) const;

private:
    void recount();

    const Clock& m_clock;
    std::optional<Spool> m_spool;
    QString m_logbook;
    std::vector<WaitingEntry> m_entries;
    std::vector<WaitingEntry> m_refused;
    Waiting m_summary;
};

} // namespace coilbook
