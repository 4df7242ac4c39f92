#include "app/command_line/command.h"
#include "app/command_line/staged_file.h"
#include "app/command_line/text.h"
#include "core/storage/logbook_store.h"

namespace coilbook {

namespace {

Outcome<void> run(const Request& request, Output&) {
    auto staged = StagedFile::forNew(request.arguments[1]);
    if (!staged) {
        return failed(staged.error());
    }
    const auto store = LogbookStore::open(request.arguments[0], OpenMode::ReadOnly);
    if (!store) {
        return failed(store.error());
    }
    if (const auto copied = store->backup(staged->path()); !copied) {
        return failed(staged->named(copied.error()));
    }
    return outcomeOf(staged->commit());
}

} // namespace

Command backupCommand() {
    Command command;
    command.name = QStringLiteral("backup");
    command.arguments = {CommandText::tr("FILE"), CommandText::tr("DEST")};
    command.summary = CommandText::tr("Copies the logbook FILE to the new file DEST.");
    command.details =
        CommandText::tr("The copy is whole and consistent, also while FILE is open elsewhere.\n"
                        "Keep copies on another device than the logbook.");
    command.run = run;
    return command;
}

} // namespace coilbook
