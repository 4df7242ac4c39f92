#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/domain/seal.h"
#include "core/domain/verify_report.h"
#include "core/support/clock.h"
#include "core/support/result.h"

#include <QString>

#include <memory>
#include <optional>
#include <vector>

namespace coilbook {

enum class OpenMode {
    ReadWrite,
    ReadOnly, ///< the file is never changed and no writable place beside it is needed; an older
              ///< schema is migrated in a temporary copy
};

/// One open logbook file: the only door to its data. Not thread-safe: made, used and destroyed in
/// one thread. Every function that changes something is one transaction that is on the disk when
/// it returns success. Expected failures come back as Error with a StorageFault or LogbookFault.
class LogbookStore {
public:
    /// Makes a new logbook; StorageFault::AlreadyExists if the path is taken.
    [[nodiscard]] static Result<LogbookStore> create(const QString& path);

    /// Opens an existing one. Missing, NotALogbook, NewerVersion, Damaged, NoPermission, Locked …
    [[nodiscard]] static Result<LogbookStore> open(const QString& path, OpenMode mode);

    LogbookStore(LogbookStore&&) noexcept;
    LogbookStore& operator=(LogbookStore&&) noexcept;
    ~LogbookStore();

    [[nodiscard]] QString path() const;
    [[nodiscard]] OpenMode mode() const;

    // Reading

    [[nodiscard]] Result<std::vector<EngineSummary>> engines() const; ///< by name
    [[nodiscard]] Result<EngineLog> engineLog(const EngineId& engine) const;
    [[nodiscard]] Result<std::vector<Tester>> testers() const;
    [[nodiscard]] Result<std::vector<Calibration>> calibrations() const;   ///< by day
    [[nodiscard]] Result<std::vector<RepeatabilityStudy>> studies() const; ///< by day
    /// The newest draft of an engine, if something is half typed.
    [[nodiscard]] Result<std::optional<Draft>> draft(const EngineId& engine) const;

    // Changing

    /// Checks the rules that need the stored data (names, order of races, hits), then applies the
    /// change in one transaction. Applying the same change twice is no error and changes nothing.
    [[nodiscard]] Result<void> apply(const Change& change, const Clock& clock);

    /// Several changes as one transaction: all or none. Each is checked against what the ones
    /// before it left behind.
    [[nodiscard]] Result<void> applyAll(const std::vector<Change>& changes, const Clock& clock);

    [[nodiscard]] Result<void> saveDraft(const Draft& draft);
    [[nodiscard]] Result<void> clearDraft(const EngineId& engine);

    /// Many rows at once for an import: opens one transaction; rows go in through the batch;
    /// nothing is stored unless commit() succeeds.
    class Batch;
    [[nodiscard]] Result<std::unique_ptr<Batch>> beginBatch();

    // Seals (core/domain/seal.h). Whatever is changed through this store is sealed as it is
    // written.

    /// The newest seal over the data of an engine: its own, its races, inspections, readings and
    /// all else of its EngineLog. Nothing where there is none yet.
    [[nodiscard]] Result<std::optional<NotedSeal>> newestSeal(const EngineId& engine) const;

    /// Whether this logbook has that seal. It proves something only where verify() finds nothing.
    [[nodiscard]] Result<SealAnswer> askSeal(const NotedSeal& noted) const;

    /// Seals all that the logbook holds as it is now: for rows that came about in another way than
    /// by being written one after the other. Goes through all rows.
    [[nodiscard]] Result<void> sealAnew(SealBeginning beginning);

    // The file

    /// A number that is another one after somebody else has changed the file.
    [[nodiscard]] Result<qint64> dataVersion() const;

    /// Pages, foreign keys, row checksums, seals and the rules of a logbook.
    [[nodiscard]] Result<VerifyReport> verify() const;

    /// A consistent copy at `destination`, which must not exist; works beside other instances.
    [[nodiscard]] Result<void> backup(const QString& destination) const;

private:
    class Private;
    explicit LogbookStore(std::unique_ptr<Private> d);
    std::unique_ptr<Private> d;
};

/// See LogbookStore::beginBatch(). Rolls back when destroyed without commit(). Rows must come after
/// the rows that they refer to. Readings are fastest in order of sitting and id.
class LogbookStore::Batch {
public:
    virtual ~Batch() = default;
    [[nodiscard]] virtual Result<void> add(const Engine& engine) = 0;
    [[nodiscard]] virtual Result<void> add(const Tester& tester) = 0;
    [[nodiscard]] virtual Result<void> add(const Calibration& calibration) = 0;
    [[nodiscard]] virtual Result<void> add(const RepeatabilityStudy& study) = 0;
    [[nodiscard]] virtual Result<void> add(const Spring& spring) = 0;
    [[nodiscard]] virtual Result<void> add(const Fitting& fitting) = 0;
    [[nodiscard]] virtual Result<void> add(const Race& race) = 0;
    [[nodiscard]] virtual Result<void> add(const Inspection& inspection) = 0;
    [[nodiscard]] virtual Result<void> add(const Sitting& sitting) = 0;
    [[nodiscard]] virtual Result<void> add(const Reading& reading) = 0;
    [[nodiscard]] virtual Result<void> add(const Running& running) = 0;
    [[nodiscard]] virtual Result<void> add(const LevelChange& change) = 0;
    [[nodiscard]] virtual Result<void> add(const PlannedRace& race) = 0;
    [[nodiscard]] virtual Result<void> add(const Shelving& shelving) = 0;
    [[nodiscard]] virtual Result<void> add(const Decision& decision) = 0;
    [[nodiscard]] virtual Result<void> add(const Amendment& amendment) = 0;
    [[nodiscard]] virtual Result<void> commit() = 0;
};

} // namespace coilbook
