#include "core/storage/sql_errors.h"

#include <QFileInfo>

namespace coilbook::storage {

namespace {

// Result codes of SQLite (sqlite.org/rescode.html); the low byte is the family.
constexpr int kBusy = 5;
constexpr int kSharedCacheLocked = 6;
constexpr int kReadOnly = 8;
constexpr int kInputOutput = 10;
constexpr int kCorrupt = 11;
constexpr int kFull = 13;
constexpr int kCannotOpen = 14;
constexpr int kConstraint = 19;
constexpr int kNotADatabase = 26;
constexpr int kPermission = 3;
constexpr int kFamily = 0xff;
constexpr int kReadOnlyRollback = 776;
constexpr int kReadOnlyMoved = 1032;
constexpr int kInputOutputDelete = 2570;

StorageFault faultOfUnopened(const QString& path) {
    const QFileInfo file(path);
    if (!file.exists()) {
        const QFileInfo folder(file.absolutePath());
        if (!folder.exists()) {
            return StorageFault::Missing;
        }
        if (!folder.isExecutable()) {
            return StorageFault::NoPermission;
        }
        return folder.isWritable() ? StorageFault::Missing : StorageFault::ReadOnly;
    }
    if (!file.isFile()) {
        return StorageFault::NotALogbook;
    }
    return file.isReadable() ? StorageFault::ReadOnly : StorageFault::NoPermission;
}

StorageFault faultOf(int code, const QString& path) {
    switch (code) {
    case kReadOnlyMoved:
        return StorageFault::Vanished;
    case kReadOnlyRollback:
        return StorageFault::NeedsRecovery;
    case kInputOutputDelete:
        // In a folder without write permission the journal of a cut-short write cannot be removed.
        return QFileInfo(QFileInfo(path).absolutePath()).isWritable() ? StorageFault::InputOutput
                                                                      : StorageFault::NeedsRecovery;
    default:
        break;
    }
    switch (code & kFamily) {
    case kPermission:
        return StorageFault::NoPermission;
    case kBusy:
    case kSharedCacheLocked:
        return StorageFault::Locked;
    case kReadOnly:
        return StorageFault::ReadOnly;
    case kInputOutput:
        return StorageFault::InputOutput;
    case kCorrupt:
        return StorageFault::Damaged;
    case kFull:
        return StorageFault::DiskFull;
    case kCannotOpen:
        return faultOfUnopened(path);
    case kConstraint:
        return StorageFault::Conflict;
    case kNotADatabase:
        return StorageFault::NotALogbook;
    default:
        return StorageFault::Internal;
    }
}

bool namesWhatWasSaid(StorageFault fault) {
    return fault == StorageFault::Damaged || fault == StorageFault::InputOutput ||
           fault == StorageFault::Conflict || fault == StorageFault::Internal;
}

} // namespace

Error errorFrom(const QSqlError& error, const QString& path) {
    bool isNumber = false;
    const int code = error.nativeErrorCode().toInt(&isNumber);
    const StorageFault fault = isNumber ? faultOf(code, path) : StorageFault::Internal;
    Error result{fault, {}, path, 0, {}, 0, {}};
    if (namesWhatWasSaid(fault)) {
        result.arguments.append(error.databaseText());
    }
    result.detail = QStringLiteral("%1 [%2] %3")
                        .arg(error.databaseText(), error.nativeErrorCode(), error.driverText());
    return result;
}

} // namespace coilbook::storage
