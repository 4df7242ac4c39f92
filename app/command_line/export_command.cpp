#include "app/command_line/command.h"
#include "app/command_line/text.h"
#include "core/exchange/export.h"

namespace coilbook {

namespace {

Outcome<void> run(const Request& request, Output&) {
    const auto store = LogbookStore::open(request.arguments[0], OpenMode::ReadOnly);
    if (!store) {
        return failed(store.error());
    }
    return outcomeOf(exportLogbook(*store, request.arguments[1]));
}

} // namespace

Command exportCommand() {
    Command command;
    command.name = QStringLiteral("export");
    command.arguments = {CommandText::tr("FILE"), CommandText::tr("FOLDER")};
    command.summary = CommandText::tr("Writes the logbook FILE as exchange files into FOLDER.");
    command.details =
        CommandText::tr("races.csv and readings.csv hold the observations, logbook.json holds "
                        "everything.\nFiles of these names are replaced; FILE is not changed.");
    command.run = run;
    return command;
}

} // namespace coilbook
