#pragma once

#include "core/storage/logbook_store.h"

namespace coilbook {

/// The folder of a logbook's automatic backups when they are kept in `parent`. It is named after
/// the logbook, and outside the logbook's own folder after its path too, so that two logbooks of
/// one name keep apart.
[[nodiscard]] QString backupFolderIn(const QString& parent, const QString& logbook);

/// The backups in that folder, the newest first; none if there is no such folder.
[[nodiscard]] QStringList backupsIn(const QString& folder);

/// Adds a backup of the open logbook to the folder, which is made if absent, and then removes those
/// that backupsToRemove() names. It has been verified before it gets its name; when that fails
/// nothing is removed. Returns its path.
[[nodiscard]] Result<QString> addBackup(const LogbookStore& store, const QString& folder,
                                        const Moment& now);

} // namespace coilbook
