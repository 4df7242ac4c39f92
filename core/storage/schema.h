#pragma once

#include "core/storage/connection.h"
#include "core/storage/migrations.h"

#include <optional>

namespace coilbook::storage {

/// `COIL`: marks an SQLite file as a logbook (PRAGMA application_id).
inline constexpr int kApplicationId = 0x434f494c;

/// What an open file says that it is. Reading this writes nothing.
struct FileIdentity {
    int applicationId = 0;
    int schemaVersion = 0;
    bool empty = false; ///< holds no table at all
};

[[nodiscard]] Result<FileIdentity> readIdentity(const Connection& connection);

/// The newest version that this program knows.
[[nodiscard]] int newestVersion(const std::vector<Migration>& migrations);

/// NotALogbook or NewerVersion if the file is not for this program.
[[nodiscard]] Result<void> checkIdentity(const FileIdentity& identity, const QString& path,
                                         const std::vector<Migration>& migrations);

/// Sets a mode of the connection and asks for it: Internal if it does not answer as `expected`.
[[nodiscard]] Result<void> setAndReadBack(const Connection& connection, const QString& pragma,
                                          const QString& value, const QString& expected);

/// Journal, sync and checking modes of this connection, set and read back, then a write that is
/// taken back: the file can be written here and now. It leaves the file as it was.
[[nodiscard]] Result<void> prepareForWriting(const Connection& connection);

/// The checking modes of a connection that only reads.
[[nodiscard]] Result<void> prepareForReading(const Connection& connection);

/// Takes all steps above `from` in one transaction.
[[nodiscard]] Result<void> migrate(const Connection& connection, int from,
                                   const std::vector<Migration>& migrations);

} // namespace coilbook::storage
