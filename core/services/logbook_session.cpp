#include "core/services/logbook_session.h"

#include "core/exchange/export.h"
#include "core/exchange/import.h"
#include "core/services/logbook_session_private.h"
#include "core/wording/import_report.h"
#include "core/wording/undo_texts.h"

#include <utility>

namespace coilbook {

LogbookSession::LogbookSession(const Clock& clock, QObject* parent)
    : QObject(parent)
    , d(std::make_unique<Private>(*this, clock)) {}

LogbookSession::~LogbookSession() {
    // Closed in the thread in which it was opened.
    d->diskQueue.post([this] { d->disk.close(); });
}

void LogbookSession::createLogbook(const QString& path) {
    d->openBy(path, [path](DiskSide& side) { return side.create(path); });
}

void LogbookSession::openLogbook(const QString& path) {
    d->openBy(path, [path](DiskSide& side) { return side.open(path); });
}

void LogbookSession::createDemo(const QString& path) {
    d->openBy(path, [path](DiskSide& side) { return side.createDemo(path); });
}

void LogbookSession::closeLogbook() {
    d->onDisk(
        [](DiskSide& side) {
            side.close();
            return Result<void>();
        },
        [this](const Result<void>&) {
            d->forgetSteps();
            d->selected = {};
            d->take({});
            Q_EMIT closed();
            d->tellAll();
        });
}

bool LogbookSession::isOpen() const {
    return !d->path.isEmpty();
}

bool LogbookSession::isReadOnly() const {
    return d->readOnlyWhy.has_value();
}

QString LogbookSession::path() const {
    return d->path;
}

const std::vector<EngineSummary>& LogbookSession::engines() const {
    return d->snapshot.engines;
}

const std::vector<Tester>& LogbookSession::testers() const {
    return d->snapshot.testers;
}

const std::vector<Calibration>& LogbookSession::calibrations() const {
    return d->snapshot.calibrations;
}

const std::vector<RepeatabilityStudy>& LogbookSession::studies() const {
    return d->snapshot.studies;
}

void LogbookSession::selectEngine(const EngineId& engine) {
    d->onDisk([engine](DiskSide& side) { return side.select(engine); },
              [this, engine](const Result<LogbookSnapshot>& result) {
                  if (!result) {
                      Q_EMIT failed(result.error());
                      return;
                  }
                  if (engine != d->selected) {
                      d->forgetSteps(); // a step is always one of the engine that is shown
                      d->currentAssessment.reset();
                  }
                  d->selected = engine;
                  d->take(*result);
                  Q_EMIT logChanged();
                  d->assessLater();
              });
}

EngineId LogbookSession::selectedEngine() const {
    return d->selected;
}

std::shared_ptr<const EngineLog> LogbookSession::log() const {
    return d->snapshot.log;
}

std::shared_ptr<const EngineHistory> LogbookSession::history() const {
    return d->snapshot.history;
}

std::shared_ptr<const Assessment> LogbookSession::assessment() const {
    return d->currentAssessment;
}

std::optional<NotedSeal> LogbookSession::seal() const {
    return d->snapshot.seal;
}

std::optional<Draft> LogbookSession::draft() const {
    return d->snapshot.draft;
}

void LogbookSession::apply(const Change& change, QObject* context, Done done) {
    std::optional<UndoStep> step =
        d->snapshot.log ? undoStepOf(change, *d->snapshot.log) : std::nullopt;
    d->applyAll({change}, [this, guard = QPointer<QObject>(context), done = std::move(done),
                           step = std::move(step)](const Result<void>& result) {
        if (result && step) {
            d->remember(*step);
        }
        if (guard && done) {
            done(result);
        }
    });
}

void LogbookSession::saveDraft(const Draft& draft) {
    d->onDisk([draft](DiskSide& side) { return side.saveDraft(draft); },
              [this](const Result<void>& result) {
                  if (!result) {
                      Q_EMIT failed(result.error());
                  }
              });
}

void LogbookSession::clearDraft() {
    d->snapshot.draft.reset();
    d->onDisk([](DiskSide& side) { return side.clearDraft(); },
              [this](const Result<void>& result) {
                  if (!result) {
                      Q_EMIT failed(result.error());
                  }
              });
}

QString LogbookSession::undoText() const {
    return d->undoSteps.empty() ? QString() : d->undoSteps.back().text;
}

QString LogbookSession::redoText() const {
    return d->redoSteps.empty() ? QString() : d->redoSteps.back().text;
}

void LogbookSession::undo() {
    d->step(d->undoSteps, d->redoSteps, &UndoStep::undo, wording::undoneReason());
}

void LogbookSession::redo() {
    d->step(d->redoSteps, d->undoSteps, &UndoStep::redo, wording::redoneReason());
}

void LogbookSession::setPerson(const QString& name) {
    d->person = name;
}

void LogbookSession::keepBackups(const QString& ownFolder, const QString& secondPlace) {
    d->diskQueue.post([this, places = BackupPlaces{ownFolder, secondPlace, true}] {
        d->disk.setBackupPlaces(places);
    });
}

void LogbookSession::backUp(const QString& destination, QObject* context, Done done) {
    d->withStore([destination](LogbookStore& store) { return store.backup(destination); }, context,
                 std::move(done));
}

void LogbookSession::exportTo(const QString& folder, QObject* context, Done done) {
    d->withStore([folder](LogbookStore& store) { return exportLogbook(store, folder); }, context,
                 std::move(done));
}

void LogbookSession::verify(const std::optional<NotedSeal>& noted, QObject* context,
                            std::function<void(const Result<LogbookCheck>&)> done) {
    d->onDisk(
        [noted](DiskSide& side) -> Result<LogbookCheck> {
            if (side.store() == nullptr) {
                return fail(StorageFault::Missing);
            }
            return side.store()->verify().and_then(
                [&](VerifyReport report) -> Result<LogbookCheck> {
                    LogbookCheck check{std::move(report), std::nullopt};
                    if (!noted) {
                        return check;
                    }
                    return side.store()->askSeal(*noted).map([&](SealAnswer answer) {
                        check.seal = answer;
                        return check;
                    });
                });
        },
        [guard = QPointer<QObject>(context),
         done = std::move(done)](const Result<LogbookCheck>& result) {
            if (guard && done) {
                done(result);
            }
        });
}

void LogbookSession::importFiles(const QStringList& paths) {
    d->importCancelled = false;
    const auto progress = [this](double part) {
        QMetaObject::invokeMethod(
            this, [this, part] { Q_EMIT importProgress(part); }, Qt::QueuedConnection);
        return !d->importCancelled;
    };

    struct Imported {
        ImportReport report;
        LogbookSnapshot snapshot;
    };

    d->onDisk(
        [this, paths, progress](DiskSide& side) -> Result<Imported> {
            if (side.store() == nullptr) {
                return fail(StorageFault::Missing);
            }
            Result<ImportReport> report =
                coilbook::importFiles(*side.store(), paths, d->clock, progress);
            if (!report) {
                return tl::unexpected(report.error());
            }
            side.noteWritten();
            Result<LogbookSnapshot> snapshot = side.reload();
            if (!snapshot) {
                return tl::unexpected(snapshot.error());
            }
            return Imported{std::move(*report), std::move(*snapshot)};
        },
        [this](const Result<Imported>& result) {
            if (!result) {
                Q_EMIT importFailed(result.error());
                return;
            }
            d->take(result->snapshot);
            Q_EMIT importFinished(wording::importReport(result->report));
            d->tellAll();
        });
}

void LogbookSession::cancelImport() {
    d->importCancelled = true;
}

} // namespace coilbook
