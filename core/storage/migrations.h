#pragma once

#include <QStringList>

#include <vector>

namespace coilbook::storage {

/// One step of the schema: the statements that lead from the version before to this one.
struct Migration {
    int version = 0;
    QStringList statements;
};

/// All steps for SQLite, in order; compiled in from migrations/sqlite/.
[[nodiscard]] const std::vector<Migration>& sqliteMigrations();

/// The statements of a migration text: paragraphs between empty lines, without comment lines.
[[nodiscard]] QStringList statementsOf(const QString& text);

} // namespace coilbook::storage
