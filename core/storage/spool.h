#pragma once

#include "core/domain/changes.h"
#include "core/storage/connection.h"
#include "core/support/clock.h"
#include "core/support/result.h"

#include <QString>

#include <memory>
#include <optional>
#include <vector>

namespace coilbook {

/// Changes that belong together (one transaction) and could not be put into their logbook yet.
struct WaitingEntry {
    qint64 number = 0; ///< order of arrival, given by the spool
    std::vector<Change> changes;
    QString readings; ///< those among them as rows of readings.csv, for people without the
                      ///< logbook
    Moment at;        ///< when it was entered
    QString refused;  ///< the rule of the logbook that was in the way; empty: it was not
};

/// Where entries wait while their logbook cannot be written to: a small file of its own on this
/// machine's disk, for all logbooks. Not thread-safe; several processes may use one file.
/// What keep() has acknowledged is on the disk. The file is made with room to spare, so that a few
/// hundred readings still find their place when the disk is full.
class Spool {
public:
    /// Opens the file, or makes it with its folder.
    [[nodiscard]] static Result<Spool> open(const QString& path);

    /// Keeps an entry for that logbook and gives it its number.
    [[nodiscard]] Result<qint64> keep(const QString& logbook, const WaitingEntry& entry);

    /// In order of arrival.
    [[nodiscard]] Result<std::vector<WaitingEntry>> entriesOf(const QString& logbook) const;

    /// The entry is in its logbook now, or nobody wants it any more.
    [[nodiscard]] Result<void> forget(qint64 number);

    /// The logbook could be written to and refused the entry: it is kept, and not tried again by
    /// itself.
    [[nodiscard]] Result<void> markRefused(qint64 number, const QString& why);

    /// What is being typed for an engine of that logbook, as in the logbook's own drafts.
    [[nodiscard]] Result<void> keepDraft(const QString& logbook, const Draft& draft);
    [[nodiscard]] Result<std::optional<Draft>> draftOf(const QString& logbook,
                                                       const EngineId& engine) const;
    [[nodiscard]] Result<void> forgetDraft(const QString& logbook, const EngineId& engine);

private:
    explicit Spool(std::unique_ptr<storage::Connection> connection)
        : m_connection(std::move(connection)) {}

    std::unique_ptr<storage::Connection> m_connection;
};

} // namespace coilbook
