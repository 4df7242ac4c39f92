#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/domain/verify_report.h"
#include "core/services/waiting.h"
#include "core/support/clock.h"
#include "core/support/result.h"

#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace coilbook {

/// What a check of the logbook found, and the answer if a seal was asked about.
struct LogbookCheck {
    VerifyReport report;
    std::optional<SealAnswer> seal;
};

/// The logbook that the window works on, seen from the window's thread. The file itself is used
/// by one worker thread; every function here returns at once and tells by a signal or callback when
/// the disk is done. Values handed out are immutable snapshots.
class LogbookSession : public QObject {
    Q_OBJECT
public:
    using Done = std::function<void(const Result<void>&)>;

    explicit LogbookSession(const Clock& clock, QObject* parent = nullptr);
    /// Finishes what is queued, then closes the file.
    ~LogbookSession() override;

    /// Ends with opened() or openFailed(). A logbook open before is closed first, and only if the
    /// new one can be opened.
    void createLogbook(const QString& path);
    void openLogbook(const QString& path);
    void createDemo(const QString& path);
    void closeLogbook();

    [[nodiscard]] bool isOpen() const;
    [[nodiscard]] bool isReadOnly() const;
    /// Why it can only be read; while it is so, what others enter appears by itself.
    [[nodiscard]] std::optional<Error> readOnlyWhy() const;
    [[nodiscard]] QString path() const;
    /// Opens the logbook anew, for writing if nobody else holds it any more.
    void takeOver();

    /// From now on, entries for a logbook that cannot be written to wait in that file, on this
    /// machine's own disk, and go into the logbook as soon as it can be, after a restart too.
    void keepWaiting(const QString& file);
    /// What waits for the open logbook. It stands in log() already, and is not saved in it yet.
    [[nodiscard]] const Waiting& waiting() const;
    /// What waits for the logbook that could not be opened last.
    [[nodiscard]] const Waiting& waitingForRefused() const;
    /// Tries it now instead of within a second.
    void putInNow();
    /// Writes the readings that wait for `logbook` as a readings.csv to `destination`, which must
    /// not exist. They go on waiting. `done` is called as by apply().
    void saveWaiting(const QString& logbook, const QString& destination, QObject* context,
                     Done done);
    /// Drops the entries that the logbook would not take.
    void forgetRefused();

    [[nodiscard]] const std::vector<EngineSummary>& engines() const;
    [[nodiscard]] const std::vector<Tester>& testers() const;
    [[nodiscard]] const std::vector<Calibration>& calibrations() const; ///< of all testers, by day
    [[nodiscard]] const std::vector<RepeatabilityStudy>& studies() const; ///< likewise

    /// Loads that engine; ends with logChanged().
    void selectEngine(const EngineId& engine);
    [[nodiscard]] EngineId selectedEngine() const;

    /// The selected engine as stored on the disk; null when none is selected or loaded yet.
    [[nodiscard]] std::shared_ptr<const EngineLog> log() const;
    [[nodiscard]] std::shared_ptr<const EngineHistory> history() const;
    /// Of log(); made in the background, so null or one step old for a moment after logChanged().
    [[nodiscard]] std::shared_ptr<const Assessment> assessment() const;
    /// The newest seal over the data of log().
    [[nodiscard]] std::optional<NotedSeal> seal() const;
    /// What was being typed for the selected engine when the program ended last.
    [[nodiscard]] std::optional<Draft> draft() const;

    /// Puts one change on the disk. `done` is called in the window's thread once it is there (or
    /// failed), before logChanged(); not at all when `context` is gone by then. It succeeds as well
    /// when the change waits: waiting() tells.
    void apply(const Change& change, QObject* context, Done done);

    /// Keeps what is being typed; call it as often as you like.
    void saveDraft(const Draft& draft);
    void clearDraft();

    /// Undo within the session: amendments and swaps are taken back by further amendments, a
    /// reading by its withdrawal. `undoText` names the step ("Reading 3 E"), empty: nothing there.
    [[nodiscard]] QString undoText() const;
    [[nodiscard]] QString redoText() const;
    void undo();
    void redo();
    /// Who works here: goes into the amendments that undo and redo make.
    void setPerson(const QString& name);

    /// From now on backs the logbook up by itself: when it is closed after something was written,
    /// and every 50 readings. Beside the logbook; in `ownFolder`, if given, when the logbook is on
    /// another device; and in `secondPlace` besides, if given, whenever that folder is there.
    void keepBackups(const QString& ownFolder, const QString& secondPlace);

    /// Writes a consistent copy of the open logbook to `destination`, which must not exist. `done`
    /// is called as by apply().
    void backUp(const QString& destination, QObject* context, Done done);

    /// Writes the exchange files of the open logbook into `folder`, replacing those of the same
    /// names. `done` is called as by apply().
    void exportTo(const QString& folder, QObject* context, Done done);

    /// Checks the whole open logbook, and whether it has a seal that was noted elsewhere. `done` is
    /// called as by apply().
    void verify(const std::optional<NotedSeal>& noted, QObject* context,
                std::function<void(const Result<LogbookCheck>&)> done);

    /// Imports exchange files into the open logbook; ends with importFinished(). progress() tells
    /// the part done, 0 to 1; cancelImport() leaves the logbook as it was.
    void importFiles(const QStringList& paths);
    void cancelImport();

Q_SIGNALS:
    void opened();
    void closed();
    void openFailed(const coilbook::Error& error);
    void enginesChanged();
    void testersChanged();
    void logChanged();
    void assessmentChanged();
    void undoChanged();
    /// A change could not be put on the disk; whoever asked has been told as well.
    void failed(const coilbook::Error& error);
    /// waiting() is another one.
    void waitingChanged();
    /// The open logbook turned out to be damaged: from now on it is only read, see readOnlyWhy().
    void writingStopped();
    /// Whoever held the logbook that is open for reading only has closed it.
    void canTakeOver();
    /// An automatic backup could not be made; the logbook itself is not touched by that.
    void backupFailed(const coilbook::Error& error);
    void importProgress(double part);
    void importFinished(const QString& report);
    void importFailed(const coilbook::Error& error);

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
