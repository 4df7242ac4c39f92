#include "core/storage/rolling_backups.h"

#include "core/storage/backup_rotation.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>

namespace coilbook {

namespace {

const QString kSuffix = QStringLiteral(".coilbook");
constexpr qsizetype kHashDigits = 8;

/// `2026-05-02T19-00-00.000Z.coilbook`: a moment without the colons that some file systems refuse.
QString nameAt(const Moment& moment) {
    QString name = moment.utc;
    name.replace(QLatin1Char(':'), QLatin1Char('-'));
    return name + kSuffix;
}

/// Only what we have named ourselves is ever listed, and so only that is ever removed.
bool isOurs(const QString& name) {
    static const QRegularExpression pattern(QRegularExpression::anchoredPattern(
        QStringLiteral("\\d{4}-\\d{2}-\\d{2}T\\d{2}-\\d{2}-\\d{2}\\.\\d{3}Z\\.coilbook")));
    return pattern.match(name).hasMatch();
}

} // namespace

QString backupFolderIn(const QString& parent, const QString& logbook) {
    const QFileInfo file(logbook);
    QString name = file.completeBaseName();
    if (QDir(parent).canonicalPath() != QDir(file.absolutePath()).canonicalPath()) {
        const QString real = file.exists() ? file.canonicalFilePath() : file.absoluteFilePath();
        const QByteArray hash =
            QCryptographicHash::hash(real.toUtf8(), QCryptographicHash::Sha256).toHex();
        name += QLatin1Char('-') + QString::fromLatin1(hash.left(kHashDigits));
    }
    return QDir(parent).filePath(name + QStringLiteral(".backups"));
}

QStringList backupsIn(const QString& folder) {
    QStringList names = QDir(folder).entryList(QDir::Files, QDir::Name | QDir::Reversed);
    names.removeIf([](const QString& name) { return !isOurs(name); });
    return names;
}

Result<QString> addBackup(const LogbookStore& store, const QString& folder, const Moment& now) {
    if (!QDir().mkpath(folder)) {
        return fail(StorageFault::ReadOnly, {}, folder);
    }
    const QString name = nameAt(now);
    const QString path = QDir(folder).filePath(name);
    if (const Result<void> made = store.backup(path); !made) {
        return tl::unexpected(made.error());
    }
    const QStringList surplus = backupsToRemove(backupsIn(folder), name);
    for (const QString& old : surplus) {
        QFile::remove(QDir(folder).filePath(old)); // one that stays is tried again next time
    }
    return path;
}

} // namespace coilbook
