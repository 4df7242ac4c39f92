#include "app/command_line/command.h"
#include "app/command_line/text.h"
#include "core/storage/logbook_store.h"
#include "core/wording/findings.h"

namespace coilbook {

namespace {

const QString kSeal = QStringLiteral("seal");

Outcome<std::optional<NotedSeal>> notedSealOf(const Request& request) {
    const std::optional<QString> text = request.value(kSeal);
    if (!text) {
        return std::optional<NotedSeal>();
    }
    const std::optional<NotedSeal> noted = NotedSeal::parse(*text);
    if (!noted) {
        return misused(UsageFault::BadSeal, {*text});
    }
    return noted;
}

Error errorOf(const VerifyReport& report, const QString& file) {
    const Finding& first = report.findings.front();
    Error error;
    error.fault = report.isIntact() ? StorageFault::Unsound : StorageFault::Damaged;
    error.arguments = QStringList{first.where};
    error.file = file;
    error.more = static_cast<qint64>(report.findings.size()) - 1 + report.more;
    return error;
}

void print(const VerifyReport& report, Output& output) {
    for (const Finding& finding : report.findings) {
        output.line(wording::findingLine(finding));
    }
    const QStringList sentences = wording::checked(report);
    for (const QString& sentence : sentences) {
        output.line(sentence);
    }
}

Outcome<void> run(const Request& request, Output& output) {
    const auto noted = notedSealOf(request);
    if (!noted) {
        return tl::unexpected(noted.error());
    }
    const QString& file = request.arguments[0];
    const auto store = LogbookStore::open(file, OpenMode::ReadOnly);
    if (!store) {
        return failed(store.error());
    }
    const auto report = store->verify();
    if (!report) {
        return failed(report.error());
    }
    print(*report, output);
    std::optional<SealAnswer> answer;
    if (*noted) {
        const auto asked = store->askSeal(**noted);
        if (!asked) {
            return failed(asked.error());
        }
        answer = *asked;
        output.line(wording::sealAnswer(*answer, **noted, *report));
    }
    if (!report->isSound()) {
        return failed(errorOf(*report, file));
    }
    if (answer && *answer != SealAnswer::PassedThrough) {
        return failed(
            Error{LogbookFault::SealNotPassed, {(*noted)->shortText()}, file, 0, {}, 0, {}});
    }
    return {};
}

} // namespace

Command verifyCommand() {
    Command command;
    command.name = QStringLiteral("verify");
    command.arguments = {CommandText::tr("FILE")};
    command.summary =
        CommandText::tr("Checks that the logbook FILE and the data in it are intact.");
    command.details = CommandText::tr("Prints what it finds, a line each. FILE is not changed.") +
                      QLatin1Char(' ') + wording::whatSealsProve();
    command.options = {Option{kSeal, CommandText::tr("NUMBER:DIGEST"),
                              CommandText::tr("says whether FILE passed through this seal"),
                              false}};
    command.run = run;
    return command;
}

} // namespace coilbook
