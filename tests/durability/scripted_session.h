#pragma once

#include "core/storage/logbook_store.h"

#include <QByteArray>
#include <QString>

#include <functional>
#include <string>
#include <vector>

namespace coilbook::testing {

/// What somebody does with a logbook, step by step. A step that has succeeded is acknowledged; one
/// that was cut short is done again with the same ids, as the program does.
struct ScriptedSession {
    using Step = std::function<Result<void>(LogbookStore&)>;

    std::string name;
    /// The file at the beginning; empty: the logbook is made.
    std::string before;
    std::vector<Step> steps;
};

/// The sessions of all sweeps: a new logbook with a round at the bench, corrections of readings and
/// of facts, swaps, imports, a backup, and a logbook of an older version. `inputs` is a folder for
/// the files that are imported, `disk` the one that the logbook lies in.
[[nodiscard]] std::vector<ScriptedSession> scriptedSessions(const QString& inputs,
                                                            const QString& disk);

/// The CSV of one engine's season with so many inspections of sixteen springs; returns `path`.
QString writeSeason(const QString& path, int inspections);

/// Imports a CSV file.
[[nodiscard]] ScriptedSession::Step importing(const QString& path);

/// How the sessions of the sweeps open their logbook.
[[nodiscard]] Result<LogbookStore> openScripted(const QString& path);

} // namespace coilbook::testing
