// The part of the session about what waits and what others do; see logbook_session.h.
#include "core/exchange/output_set.h"
#include "core/services/logbook_session_private.h"

#include <QFileInfo>

namespace coilbook {

void LogbookSession::keepWaiting(const QString& file) {
    d->diskQueue.post([this, file] { d->disk.room().useSpool(file); });
}

const Waiting& LogbookSession::waiting() const {
    return d->snapshot.waiting;
}

const Waiting& LogbookSession::waitingForRefused() const {
    return d->waitingForRefused;
}

void LogbookSession::putInNow() {
    d->lookAround();
}

void LogbookSession::saveWaiting(const QString& logbook, const QString& destination,
                                 QObject* context, Done done) {
    d->onDisk(
        [logbook, destination](DiskSide& side) -> Result<void> {
            if (QFileInfo::exists(destination)) {
                return fail(StorageFault::AlreadyExists, {}, destination);
            }
            const Result<QByteArray> csv = side.room().readingsCsv(logbook);
            if (!csv) {
                return tl::unexpected(csv.error());
            }
            OutputFile file(destination);
            file.write(*csv);
            return file.finish().and_then([&] { return file.rename(); });
        },
        [guard = QPointer<QObject>(context), done = std::move(done)](const Result<void>& result) {
            if (guard && done) {
                done(result);
            }
        });
}

void LogbookSession::forgetRefused() {
    d->onDisk(
        [](DiskSide& side) {
            return side.room().forgetRefused().and_then([&] { return side.reload(); });
        },
        [this](const Result<LogbookSnapshot>& result) {
            if (!result) {
                Q_EMIT failed(result.error());
                return;
            }
            d->take(*result);
        });
}

std::optional<Error> LogbookSession::readOnlyWhy() const {
    return d->readOnlyWhy;
}

void LogbookSession::takeOver() {
    openLogbook(d->path);
}

} // namespace coilbook
