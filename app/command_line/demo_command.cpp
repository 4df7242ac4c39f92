#include "app/command_line/command.h"
#include "app/command_line/staged_file.h"
#include "app/command_line/text.h"
#include "core/demo/demo.h"

namespace coilbook {

namespace {

Outcome<void> run(const Request& request, Output&) {
    const QString& file = request.arguments[0];
    auto staged = StagedFile::forNew(file);
    if (!staged) {
        return failed(staged.error());
    }
    if (const auto written = writeDemo(staged->path(), SystemClock()); !written) {
        return failed(staged->named(written.error()));
    }
    return outcomeOf(staged->commit());
}

} // namespace

Command demoCommand() {
    Command command;
    command.name = QStringLiteral("demo");
    command.arguments = {CommandText::tr("FILE")};
    command.summary = CommandText::tr("Writes the demo logbook to the new file FILE.");
    command.details = CommandText::tr("An invented team, two engines and a season of inspections.");
    command.run = run;
    return command;
}

} // namespace coilbook
