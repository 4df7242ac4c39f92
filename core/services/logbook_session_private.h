#pragma once

#include "core/services/disk_side.h"
#include "core/services/job_queue.h"
#include "core/services/logbook_session.h"
#include "core/services/undo_step.h"

#include <QPointer>
#include <QTimer>

#include <atomic>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace coilbook {

/// What a session keeps beside its file; a part of logbook_session.cpp and its sisters alone.
class LogbookSession::Private {
public:
    /// Steps that are kept for undo.
    static constexpr std::size_t kMostSteps = 200;
    /// Somebody else's entries appear, and what waits is tried again, after this long.
    static constexpr int kLookAroundMilliseconds = 1000;

    Private(LogbookSession& session, const Clock& theClock)
        : q(session)
        , clock(theClock)
        , disk(theClock) {
        timer.setInterval(kLookAroundMilliseconds);
        QObject::connect(&timer, &QTimer::timeout, &session, [this] { lookAround(); });
        timer.start();
    }

    /// Does `work` on the disk, then `then` with its result in the session's thread. Both thread
    /// queues end before the session does, so `this` outlives every job.
    template <class Work, class Then>
    void onDisk(Work work, Then then) {
        diskQueue.post([this, work = std::move(work), then = std::move(then)]() mutable {
            auto result = work(disk);
            QMetaObject::invokeMethod(
                &q,
                [this, result = std::move(result), then = std::move(then),
                 whyNow = disk.readOnlyWhy(), pathNow = disk.path()] {
                    const bool isStopped = !readOnlyWhy && whyNow && path == pathNow;
                    readOnlyWhy = whyNow;
                    path = pathNow;
                    then(result);
                    if (isStopped) {
                        Q_EMIT q.writingStopped();
                    }
                },
                Qt::QueuedConnection);
        });
    }

    /// Does `work` on the open logbook, which it leaves as it is; `done` as by apply().
    template <class Work>
    void withStore(Work work, QObject* context, Done done) {
        onDisk(
            [work = std::move(work)](DiskSide& side) -> Result<void> {
                if (side.store() == nullptr) {
                    return side.room().why() ? tl::unexpected(*side.room().why())
                                             : fail(StorageFault::Missing);
                }
                return work(*side.store());
            },
            [guard = QPointer<QObject>(context),
             done = std::move(done)](const Result<void>& result) {
                if (guard && done) {
                    done(result);
                }
            });
    }

    template <class Open>
    void openBy(const QString& wanted, Open open) {
        struct Outcome {
            Result<LogbookSnapshot> opened;
            Waiting waiting; ///< for a logbook that could not be opened
        };

        const auto work = [wanted, open = std::move(open)](DiskSide& side) {
            Outcome outcome{open(side), {}};
            if (!outcome.opened) {
                outcome.waiting = side.room().waitingFor(wanted);
            }
            return outcome;
        };
        onDisk(work, [this](const Outcome& outcome) {
            const Result<LogbookSnapshot>& result = outcome.opened;
            waitingForRefused = outcome.waiting;
            if (!result) {
                Q_EMIT q.openFailed(result.error());
                return;
            }
            forgetSteps();
            isFree = false;
            selected = {};
            take(*result);
            Q_EMIT q.opened();
            tellAll();
        });
    }

    /// Takes up what a job brought; tells whether something waits, if that has changed.
    void take(const LogbookSnapshot& fresh) {
        const bool isOther = fresh.waiting != snapshot.waiting;
        snapshot = fresh;
        if (isOther) {
            Q_EMIT q.waitingChanged();
        }
    }

    /// Somebody else's changes, and what waits: looked after now and then.
    void lookAround() {
        const bool hasToLook = readOnlyWhy || !snapshot.waiting.isEmpty();
        if (path.isEmpty() || !hasToLook || isLooking) {
            return;
        }
        isLooking = true;
        onDisk([](DiskSide& side) { return side.lookAround(); },
               [this](const DiskNews& news) {
                   isLooking = false;
                   if (news.fresh) {
                       take(*news.fresh);
                       tellAll();
                   }
                   if (news.isFree != isFree) {
                       isFree = news.isFree;
                       if (isFree) {
                           Q_EMIT q.canTakeOver();
                       }
                   }
               });
    }

    void tellAll() {
        Q_EMIT q.enginesChanged();
        Q_EMIT q.testersChanged();
        Q_EMIT q.logChanged();
        assessLater();
    }

    void assessLater() {
        const int request = ++newestRequest;
        if (!snapshot.log) {
            currentAssessment.reset();
            Q_EMIT q.assessmentChanged();
            return;
        }
        assessQueue.post(
            [this, request, history = snapshot.history, rules = snapshot.log->engine.rules] {
                if (request != newestRequest) {
                    return; // a newer one is queued behind this
                }
                auto made = std::make_shared<const Assessment>(assess(*history, rules));
                QMetaObject::invokeMethod(
                    &q,
                    [this, request, made = std::move(made)] {
                        if (request == newestRequest) {
                            currentAssessment = made;
                            Q_EMIT q.assessmentChanged();
                        }
                    },
                    Qt::QueuedConnection);
            });
    }

    void applyAll(const std::vector<Change>& changes, const Done& done) {
        onDisk([changes](DiskSide& side) { return side.apply(changes); },
               [this, done](const Result<LogbookSnapshot>& result) {
                   if (!result) {
                       done(tl::unexpected(result.error()));
                       Q_EMIT q.failed(result.error());
                       return;
                   }
                   take(*result);
                   done({});
                   tellAll();
               });
        // Behind the change: the window has its answer before the backup begins.
        onDisk([](DiskSide& side) { return side.backUpWhenDue(); },
               [this](const Result<void>& result) {
                   if (!result) {
                       Q_EMIT q.backupFailed(result.error());
                   }
               });
    }

    void remember(UndoStep step) {
        redoSteps.clear();
        undoSteps.push_back(std::move(step));
        if (undoSteps.size() > kMostSteps) {
            undoSteps.erase(undoSteps.begin());
        }
        Q_EMIT q.undoChanged();
    }

    void forgetSteps() {
        undoSteps.clear();
        redoSteps.clear();
        Q_EMIT q.undoChanged();
    }

    /// Moves the last step of `from` to `to` once its changes are on the disk.
    void step(std::vector<UndoStep>& from, std::vector<UndoStep>& to,
              UndoStep::Changes UndoStep::*way, const QString& why) {
        if (from.empty() || !snapshot.log) {
            return;
        }
        UndoStep last = std::move(from.back());
        from.pop_back();
        Q_EMIT q.undoChanged();
        const std::vector<Change> changes = (last.*way)({person, clock.now(), why}, *snapshot.log);
        applyAll(changes, [this, &from, &to, last](const Result<void>& result) {
            (result ? to : from).push_back(last);
            Q_EMIT q.undoChanged();
        });
    }

    LogbookSession& q;
    const Clock& clock;

    QString path;
    std::optional<Error> readOnlyWhy;
    bool isFree = false;    ///< whoever held the logbook has closed it
    bool isLooking = false; ///< a look around is under way
    Waiting waitingForRefused;
    QTimer timer;
    EngineId selected;
    QString person;
    LogbookSnapshot snapshot;
    std::shared_ptr<const Assessment> currentAssessment;
    std::atomic<int> newestRequest = 0;
    std::atomic<bool> importCancelled = false;
    std::vector<UndoStep> undoSteps;
    std::vector<UndoStep> redoSteps;

    DiskSide disk; // touched by jobs of diskQueue alone
    JobQueue assessQueue;
    JobQueue diskQueue; // last: ends first, with its jobs done
};

} // namespace coilbook
