#include "app/command_line/command.h"
#include "app/command_line/text.h"
#include "core/storage/logbook_store.h"
#include "core/support/text.h"

namespace coilbook {

namespace {

Outcome<void> run(const Request& request, Output& output) {
    const QString& file = request.arguments[0];
    const auto store = LogbookStore::open(file, OpenMode::ReadOnly);
    if (!store) {
        return failed(store.error());
    }
    const auto report = store->verify();
    if (!report) {
        return failed(report.error());
    }
    if (report->findings.empty()) {
        output.line(
            report->rowsChecked == 1
                ? CommandText::tr("1 row checked, nothing wrong.")
                : CommandText::tr("%1 rows checked, nothing wrong.").arg(report->rowsChecked));
        return {};
    }
    for (const VerifyReport::Finding& finding : report->findings) {
        output.line(shown(finding.where) + QStringLiteral(": ") + shown(finding.what, 200));
    }
    Error error{StorageFault::Damaged, {report->findings.front().what}, file, 0, {}, 0, {}};
    error.more = static_cast<qint64>(report->findings.size()) - 1;
    return failed(error);
}

} // namespace

Command verifyCommand() {
    Command command;
    command.name = QStringLiteral("verify");
    command.arguments = {CommandText::tr("FILE")};
    command.summary =
        CommandText::tr("Checks that the logbook FILE and the data in it are intact.");
    command.details = CommandText::tr("Prints what it finds, a line each. FILE is not changed.");
    command.run = run;
    return command;
}

} // namespace coilbook
