#include "core/storage/backup.h"

#include "core/storage/durable_files.h"
#include "core/storage/schema.h"
#include "core/storage/verification.h"

#include <QFile>
#include <QFileInfo>

namespace coilbook::storage {

namespace {

Result<qint64> checkedRows(const Connection& connection) {
    const Result<VerifyReport> report = verifyFile(connection);
    if (!report) {
        return tl::unexpected(report.error());
    }
    if (!report->isIntact()) {
        return fail(StorageFault::Damaged, {report->findings.front().where}, connection.path());
    }
    return report->rowsChecked;
}

Result<void> checkCopy(const QString& path, qint64 rowsOfSource) {
    const Result<std::unique_ptr<Connection>> copy =
        Connection::open(path, Connection::Access::ReadOnly);
    if (!copy) {
        return tl::unexpected(copy.error());
    }
    const Result<FileIdentity> identity = readIdentity(**copy);
    if (!identity) {
        return tl::unexpected(identity.error());
    }
    if (Result<void> ours = checkIdentity(*identity, path, sqliteMigrations()); !ours) {
        return ours;
    }
    const Result<qint64> rows = checkedRows(**copy);
    if (!rows) {
        return tl::unexpected(rows.error());
    }
    // Others may have added rows between the check of the source and the copy; none may be gone.
    if (*rows < rowsOfSource) {
        return fail(StorageFault::Damaged, {QStringLiteral("%1 < %2").arg(*rows).arg(rowsOfSource)},
                    path);
    }
    return {};
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
    const Result<qint64> rows = checkedRows(source);
    if (!rows) {
        return tl::unexpected(rows.error());
    }
    const QString unfinished = unfinishedName(destination);
    Result<void> done = copyInto(source, unfinished)
                            .and_then([&] { return checkCopy(unfinished, *rows); })
                            .and_then([&] { return moveDurably(unfinished, destination); });
    if (!done) {
        QFile::remove(unfinished);
        if (done.error().file == unfinished) {
            done.error().file = destination;
        }
    }
    return done;
}

} // namespace coilbook::storage
