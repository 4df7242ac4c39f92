#include "core/services/lives_reader.h"

#include "core/services/job_queue.h"
#include "core/storage/logbook_store.h"

#include <atomic>

namespace coilbook {

namespace {

Result<std::vector<EngineLog>> logsOf(const QString& logbook) {
    const Result<LogbookStore> store = LogbookStore::open(logbook, OpenMode::ReadOnly);
    if (!store) {
        return tl::unexpected(store.error());
    }
    const Result<std::vector<EngineSummary>> engines = store->engines();
    if (!engines) {
        return tl::unexpected(engines.error());
    }
    std::vector<EngineLog> logs;
    for (const EngineSummary& engine : *engines) {
        Result<EngineLog> log = store->engineLog(engine.id);
        if (!log) {
            return tl::unexpected(log.error());
        }
        logs.push_back(std::move(*log));
    }
    return logs;
}

} // namespace

class LivesReader::Private {
public:
    std::atomic<int> newest = 0;
    JobQueue queue; ///< last member: it ends before what its jobs use
};

LivesReader::LivesReader(QObject* parent)
    : QObject(parent)
    , d(std::make_unique<Private>()) {}

LivesReader::~LivesReader() {
    ++d->newest;
}

void LivesReader::read(const QString& logbook) {
    const int number = ++d->newest;
    d->queue.post([this, number, logbook] {
        if (number != d->newest) {
            return; // a newer one is queued behind this
        }
        auto lives = std::make_shared<std::vector<SpringLife>>();
        if (const Result<std::vector<EngineLog>> logs = logsOf(logbook)) {
            *lives = springLives(*logs);
        }
        QMetaObject::invokeMethod(
            this,
            [this, number, lives = std::shared_ptr<const std::vector<SpringLife>>(lives)] {
                if (number == d->newest) {
                    Q_EMIT livesRead(lives);
                }
            },
            Qt::QueuedConnection);
    });
}

} // namespace coilbook
