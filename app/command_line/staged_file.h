#pragma once

#include "core/support/result.h"

#include <QString>

namespace coilbook {

/// A new file on its way: it is written under a name of its own beside the place where it shall
/// stand, and takes that place only when it is complete. If that never happens it is removed, with
/// what SQLite may have put beside it.
class StagedFile {
public:
    /// For a target that must not exist: StorageFault::AlreadyExists, and Missing for its folder.
    [[nodiscard]] static Result<StagedFile> forNew(const QString& target);

    StagedFile(StagedFile&& other) noexcept;
    StagedFile& operator=(StagedFile&&) = delete;
    ~StagedFile();

    /// Where to write; nothing is there yet.
    [[nodiscard]] const QString& path() const { return m_path; }

    /// An error from writing it, as seen by the user: it names the target.
    [[nodiscard]] Error named(Error error) const;

    /// Puts the file in its place, unless somebody else has put one there meanwhile.
    [[nodiscard]] Result<void> commit();

private:
    StagedFile(QString target, QString path);

    QString m_target;
    QString m_path; ///< empty: nothing left to remove
};

} // namespace coilbook
