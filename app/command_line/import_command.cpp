#include "app/command_line/command.h"
#include "app/command_line/staged_file.h"
#include "app/command_line/text.h"
#include "core/exchange/import.h"
#include "core/storage/logbook_lock.h"
#include "core/support/clock.h"
#include "core/wording/import_report.h"

#include <QFileInfo>

namespace coilbook {

namespace {

/// Imports and prints the report before the last row is committed: if it cannot be printed, nothing
/// is imported.
Result<void> importInto(Result<LogbookStore> store, const QStringList& inputs, Output& output) {
    if (!store) {
        return tl::unexpected(store.error());
    }
    const auto report = [&](const ImportReport& done) {
        output.line(wording::importReport(done));
        return output.flush();
    };
    return importFiles(*store, inputs, SystemClock(), {}, report).map([](const auto&) {});
}

Result<void> importIntoNew(const QString& file, const QStringList& inputs, Output& output) {
    auto staged = StagedFile::forNew(file);
    if (!staged) {
        return tl::unexpected(staged.error());
    }
    // The file is closed at the end of this statement, before it gets its name.
    const auto imported = importInto(LogbookStore::create(staged->path()), inputs, output);
    if (!imported) {
        return tl::unexpected(staged->named(imported.error()));
    }
    return staged->commit();
}

Outcome<void> run(const Request& request, Output& output) {
    const QString& file = request.arguments.first();
    const QStringList inputs = request.arguments.mid(1);
    if (!QFileInfo::exists(file)) {
        return outcomeOf(importIntoNew(file, inputs, output));
    }
    const auto lock = LogbookLock::acquire(file);
    if (!lock) {
        return failed(lock.error());
    }
    return outcomeOf(importInto(LogbookStore::open(file, OpenMode::ReadWrite), inputs, output));
}

} // namespace

Command importCommand() {
    Command command;
    command.name = QStringLiteral("import");
    command.arguments = {CommandText::tr("FILE"), CommandText::tr("CSV")};
    command.repeatsLast = true;
    command.summary = CommandText::tr("Reads exchange files into the logbook FILE.");
    command.details = CommandText::tr(
        "Each CSV holds readings or races, as its first line tells. FILE is made if it is not "
        "there.\nEither everything is taken from all of them or nothing; rows that are in FILE "
        "already change nothing.");
    command.run = run;
    return command;
}

} // namespace coilbook
