#include "app/command_line/assess_all.h"
#include "app/command_line/command.h"
#include "app/command_line/option_values.h"
#include "app/command_line/standing_table.h"
#include "app/command_line/text.h"
#include "core/exchange/assessment_json.h"
#include "core/storage/logbook_store.h"

namespace coilbook {

namespace {

const QString kEngine = QStringLiteral("engine");
const QString kJson = QStringLiteral("json");

/// The engines that the request is about: one by name, or all.
Result<std::vector<EngineSummary>> chosenEngines(const LogbookStore& store,
                                                 const std::optional<QString>& name) {
    auto engines = store.engines();
    if (!engines || !name) {
        return engines;
    }
    return engineNamed(*name, *engines, store.path()).map([](const EngineSummary& engine) {
        return std::vector{engine};
    });
}

void printTables(const std::vector<Assessment>& assessments, Output& output) {
    if (assessments.empty()) {
        output.line(CommandText::tr("There are no engines in this logbook."));
    }
    for (const Assessment& assessment : assessments) {
        if (&assessment != &assessments.front()) {
            output.line({});
        }
        output.line(standingTable(assessment).join(QLatin1Char('\n')));
    }
}

Outcome<void> run(const Request& request, Output& output) {
    const auto judging = judgingRequestOf(request);
    if (!judging) {
        return tl::unexpected(judging.error());
    }
    const auto store = LogbookStore::open(request.arguments[0], OpenMode::ReadOnly);
    if (!store) {
        return failed(store.error());
    }
    const auto engines = chosenEngines(*store, request.value(kEngine));
    if (!engines) {
        return failed(engines.error());
    }
    const auto assessments = assessAll(*store, *engines, *judging);
    if (!assessments) {
        return failed(assessments.error());
    }
    if (request.has(kJson)) {
        output.raw(assessmentsToJson(*assessments));
    } else {
        printTables(*assessments, output);
    }
    return {};
}

} // namespace

Command assessCommand() {
    Command command;
    command.name = QStringLiteral("assess");
    command.arguments = {CommandText::tr("FILE")};
    command.summary = CommandText::tr("Tells the standing of each spring in the logbook FILE.");
    command.details = CommandText::tr("FILE is not changed.");
    command.options = {engineOption(false), asOfOption(), limitOption(), aheadOption(),
                       Option{kJson, {}, CommandText::tr("as JSON instead of a table"), false}};
    command.run = run;
    return command;
}

} // namespace coilbook
