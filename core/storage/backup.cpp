#include "core/storage/backup.h"

#include "core/storage/durable_files.h"
#include "core/storage/schema.h"
#include "core/storage/seals.h"
#include "core/storage/verification.h"

#include <QFile>
#include <QFileInfo>

namespace coilbook::storage {

namespace {

Result<void> checkIntact(const Connection& connection) {
    const Result<VerifyReport> report = verifyFile(connection);
    if (!report) {
        return tl::unexpected(report.error());
    }
    if (!report->isIntact()) {
        return fail(StorageFault::Damaged, {report->findings.front().where}, connection.path());
    }
    return {};
}

/// The copy is whole and holds all that was sealed in the source: its rows are those that the chain
/// is over, and the chain goes on at least to `newest`. Others may have added to it meanwhile.
Result<void> checkCopy(const QString& path, const NotedSeal& newest) {
    const Result<std::unique_ptr<Connection>> copy =
        Connection::open(path, Connection::Access::ReadOnly);
    if (!copy) {
        return tl::unexpected(copy.error());
    }
    const Result<FileIdentity> identity = readIdentity(**copy);
    if (!identity) {
        return tl::unexpected(identity.error());
    }
    return checkIdentity(*identity, path, sqliteMigrations())
        .and_then([&] { return checkIntact(**copy); })
        .and_then([&] { return askSeal(**copy, newest); })
        .and_then([&](SealAnswer answer) -> Result<void> {
            if (answer != SealAnswer::PassedThrough) {
                return fail(StorageFault::Damaged, {newest.shortText()}, path);
            }
            return {};
        });
}

/// SQLite may copy a truncated file without complaint, so it is the copy that is checked. Where
/// that one is not whole, the source tells whose fault it is.
Error blameFor(const Error& error, const Connection& source) {
    const auto* fault = std::get_if<StorageFault>(&error.fault);
    if (fault == nullptr || *fault != StorageFault::Damaged) {
        return error;
    }
    const Result<void> whole = checkIntact(source);
    return whole ? error : whole.error();
}

/// Rows of an older version are not this program's to check; the pages are.
Result<void> checkPagesOf(const Connection& connection) {
    return connection.scalar(QStringLiteral("PRAGMA integrity_check"))
        .and_then([&](const QVariant& answer) -> Result<void> {
            if (answer.toString() != QLatin1String("ok")) {
                return fail(StorageFault::Damaged, {answer.toString()}, connection.path());
            }
            return {};
        });
}

Result<void> checkPagesOf(const QString& path) {
    const Result<std::unique_ptr<Connection>> copy =
        Connection::open(path, Connection::Access::ReadOnly);
    return copy ? checkPagesOf(**copy) : tl::unexpected(copy.error());
}

/// What a failure on the way to the copy means for whoever asked for it.
Error aboutDestination(Error error, const QString& destination) {
    const auto* fault = std::get_if<StorageFault>(&error.fault);
    // SQLite's word for a target that it cannot make; the source is open and readable by now.
    if (fault != nullptr && (*fault == StorageFault::Missing || *fault == StorageFault::ReadOnly ||
                             *fault == StorageFault::NoPermission)) {
        const QFileInfo folder(QFileInfo(destination).absolutePath());
        error.fault = !folder.exists() ? StorageFault::Missing : StorageFault::ReadOnly;
        error.file = destination;
    }
    return error;
}

} // namespace

Result<void> copyInto(const Connection& source, const QString& destination) {
    return source.run(QStringLiteral("VACUUM INTO ?"), {destination})
        .map_error([&](const Error& error) { return aboutDestination(error, destination); });
}

Result<void> backUp(const Connection& source, const QString& destination) {
    if (QFileInfo::exists(destination)) {
        return fail(StorageFault::AlreadyExists, {}, destination);
    }
    const Result<ChainEnd> end = chainEnd(source);
    if (!end) {
        return tl::unexpected(end.error());
    }
    const QString unfinished = unfinishedName(destination);
    Result<void> done = copyInto(source, unfinished)
                            .and_then([&] {
                                return checkCopy(unfinished, {end->number, end->digest});
                            })
                            .map_error([&](const Error& error) { return blameFor(error, source); })
                            .and_then([&] { return moveDurably(unfinished, destination); });
    if (!done) {
        QFile::remove(unfinished);
        if (done.error().file == unfinished) {
            done.error().file = destination;
        }
    }
    return done;
}

Result<void> keepOlderVersion(const Connection& older, int version) {
    const QFileInfo file(older.path());
    const QString kept =
        file.absolutePath() +
        QStringLiteral("/%1.version-%2.coilbook").arg(file.completeBaseName()).arg(version);
    if (QFileInfo::exists(kept)) {
        return {};
    }
    const QString unfinished = unfinishedName(kept);
    Result<void> done = checkPagesOf(older)
                            .and_then([&] { return copyInto(older, unfinished); })
                            .and_then([&] { return checkPagesOf(unfinished); })
                            .and_then([&] { return moveDurably(unfinished, kept); });
    if (!done) {
        QFile::remove(unfinished);
        if (done.error().file == unfinished) {
            done.error().file = kept;
        }
    }
    return done;
}

} // namespace coilbook::storage
