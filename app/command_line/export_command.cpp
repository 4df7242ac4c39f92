#include "app/command_line/command.h"
#include "app/command_line/text.h"
#include "core/exchange/export.h"
#include "core/storage/salvage.h"
#include "core/wording/waiting_words.h"

#include <cstdio>

namespace coilbook {

namespace {

const QString kReadable = QStringLiteral("readable");

/// Of a damaged logbook, whatever can be read.
Outcome<void> exportReadable(const QString& file, const QString& folder) {
    const auto readable = salvage(file);
    if (!readable) {
        return failed(readable.error());
    }
    const auto store = LogbookStore::open(readable->path, OpenMode::ReadOnly);
    if (!store) {
        return failed(store.error());
    }
    const auto written = exportLogbook(*store, folder);
    if (written) {
        std::fprintf(
            stderr, "coilbook: %s\n",
            qPrintable(wording::salvaged(readable->left, readable->altered, readable->hasGaps)));
    }
    return outcomeOf(written);
}

Outcome<void> run(const Request& request, Output&) {
    if (request.has(kReadable)) {
        return exportReadable(request.arguments[0], request.arguments[1]);
    }
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
    command.options = {
        Option{kReadable, {}, CommandText::tr("of a damaged FILE, what can still be read"), false}};
    command.run = run;
    return command;
}

} // namespace coilbook
