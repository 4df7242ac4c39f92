#pragma once

#include <QStringList>

#include <vector>

namespace coilbook::storage {

/// A table whose rows get further columns: their checksums, which cover all columns, are renewed.
struct WidenedTable {
    QString name;
    QStringList columns; ///< the ones that its checksum covered before
    QStringList added;
};

/// One step of the schema: the statements that lead from the version before to this one.
struct Migration {
    int version = 0;
    QStringList statements;
    std::vector<WidenedTable> widened; ///< by the statements
};

/// All steps for SQLite, in order; compiled in from migrations/sqlite/.
[[nodiscard]] const std::vector<Migration>& sqliteMigrations();

/// The statements of a migration text: paragraphs between empty lines, without comment lines.
[[nodiscard]] QStringList statementsOf(const QString& text);

} // namespace coilbook::storage
