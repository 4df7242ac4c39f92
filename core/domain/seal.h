#pragma once

#include <QString>
#include <QStringView>

#include <optional>

namespace coilbook {

/// What a chain of seals begins with, or begins with anew.
enum class SealBeginning {
    Created,  ///< an empty logbook
    Migrated, ///< brought up to date from a version that had no seals or other columns
    Imported, ///< made from a whole exported logbook
    Restored, ///< put back from a backup
};

/// A seal as one notes it outside of the logbook: on a printed sheet, say. The digest is in
/// lower-case hexadecimal digits, whole (64) or its beginning.
struct NotedSeal {
    qint64 number = 0;
    QString digest;

    bool operator==(const NotedSeal&) const = default;

    /// Fewer digits prove too little, more there are not.
    static constexpr qsizetype kLeastDigits = 8;
    static constexpr qsizetype kMostDigits = 64;
    /// As many as are printed: 64 bits, too many to search another logbook for that has them.
    static constexpr qsizetype kShortDigits = 16;

    /// From `NUMBER:DIGEST` with 8 to 64 hexadecimal digits of either case, spaces around it
    /// ignored; nothing if it is not that.
    [[nodiscard]] static std::optional<NotedSeal> parse(QStringView text);

    /// `NUMBER:DIGEST` with the digits that are printed.
    [[nodiscard]] QString shortText() const;
};

} // namespace coilbook
