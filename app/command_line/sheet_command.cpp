#include "app/command_line/command.h"
#include "app/command_line/option_values.h"
#include "app/command_line/text.h"
#include "core/domain/history.h"
#include "core/services/sheet_content.h"
#include "core/storage/logbook_store.h"
#include "core/support/clock.h"
#include "core/wording/quantities.h"
#include "ui/printing/sheet_pdf.h"

#include <QLocale>

namespace coilbook {

namespace {

const QString kEngine = QStringLiteral("engine");
const QString kOut = QStringLiteral("out");
const QString kPaper = QStringLiteral("paper");

Outcome<Paper> paperOf(const Request& request) {
    const QString text = request.value(kPaper).value_or(QStringLiteral("a4"));
    if (text == QLatin1String("a4")) {
        return Paper::A4;
    }
    if (text == QLatin1String("letter")) {
        return Paper::Letter;
    }
    return misused(UsageFault::BadPaper, {text});
}

Result<SheetContent> contentOf(const QString& file, const QString& engine,
                               const JudgingRequest& judging) {
    const auto store = LogbookStore::open(file, OpenMode::ReadOnly);
    if (!store) {
        return tl::unexpected(store.error());
    }
    return store->engines()
        .and_then([&](const std::vector<EngineSummary>& engines) {
            return engineNamed(engine, engines, file);
        })
        .and_then([&](const EngineSummary& summary) { return store->engineLog(summary.id); })
        .and_then([&](const EngineLog& log) {
            return store->newestSeal(log.engine.id).map([&](const std::optional<NotedSeal>& seal) {
                const EngineHistory history = historyOf(log, judging.asOf);
                return sheetContentOf(log, history, assess(history, log.engine.rules),
                                      Quantities(ForceUnit::PoundForce, QLocale::c()),
                                      SystemClock().now(), seal);
            });
        });
}

Outcome<void> run(const Request& request, Output&) {
    const auto judging = judgingRequestOf(request);
    if (!judging) {
        return tl::unexpected(judging.error());
    }
    const auto paper = paperOf(request);
    if (!paper) {
        return tl::unexpected(paper.error());
    }
    const QString out = *request.value(kOut);
    const auto content = contentOf(request.arguments[0], *request.value(kEngine), *judging);
    if (!content) {
        return failed(content.error());
    }
    return outcomeOf(writeSheetPdf(*content, out, *paper));
}

} // namespace

Command sheetCommand() {
    Command command;
    command.name = QStringLiteral("sheet");
    command.arguments = {CommandText::tr("FILE")};
    command.summary =
        CommandText::tr("Writes an engine's spring sheet for tech inspection as PDF.");
    command.details =
        CommandText::tr("One page. FILE is not changed; a PDF of that name is replaced.");
    command.options = {engineOption(true),
                       Option{kOut, CommandText::tr("FILE.pdf"),
                              CommandText::tr("where to write the sheet"), true},
                       Option{kPaper, CommandText::tr("a4|letter"),
                              CommandText::tr("size of the paper; else a4"), false},
                       asOfOption()};
    command.needsFonts = true;
    command.run = run;
    return command;
}

} // namespace coilbook
