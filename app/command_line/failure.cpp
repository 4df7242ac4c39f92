#include "app/command_line/failure.h"

#include "app/command_line/text.h"
#include "core/support/text.h"
#include "core/wording/wording.h"

namespace coilbook {

namespace {

QString sentenceOf(const UsageError& error) {
    const QString first = shown(error.arguments.value(0));
    const QString second = shown(error.arguments.value(1));
    switch (error.fault) {
    case UsageFault::UnknownCommand:
        return CommandText::tr("There is no command '%1'. 'coilbook --help' lists the commands.")
            .arg(first);
    case UsageFault::UnknownOption:
        return second.isEmpty()
                   ? CommandText::tr("There is no option '%1'. 'coilbook --help' tells what there "
                                     "is.")
                         .arg(first)
                   : CommandText::tr("There is no option '%1' here. 'coilbook %2 --help' lists the "
                                     "options.")
                         .arg(first, second);
    case UsageFault::OptionNeedsValue:
        return CommandText::tr("The option %1 needs a value: %1 %2.").arg(first, second);
    case UsageFault::OptionTakesNoValue:
        return CommandText::tr("The option %1 takes no value. Leave out what follows it.")
            .arg(first);
    case UsageFault::OptionTwice:
        return CommandText::tr("The option %1 is given twice. Give it once.").arg(first);
    case UsageFault::MissingOption:
        return CommandText::tr("The option %1 is missing. 'coilbook %2 --help' shows how the "
                               "command is written.")
            .arg(first, second);
    case UsageFault::MissingArgument:
        return CommandText::tr("%1 is missing. 'coilbook %2 --help' shows how the command is "
                               "written.")
            .arg(first, second);
    case UsageFault::TooManyArguments:
        return CommandText::tr("'%1' is one argument too many. 'coilbook %2 --help' shows how the "
                               "command is written.")
            .arg(first, second);
    case UsageFault::BadDate:
        return CommandText::tr("'%1' is not a date. Write it as year, month and day: 2026-05-02.")
            .arg(first);
    case UsageFault::BadLimit:
        return CommandText::tr("'%1' is not a limit. Give the loss in lbf as a number above 0, "
                               "such as 5 or 4.5.")
            .arg(first);
    case UsageFault::BadRacesAhead:
        return CommandText::tr("'%1' is not a number of races ahead. Give a whole number from 0 to "
                               "60.")
            .arg(first);
    case UsageFault::BadPaper:
        return CommandText::tr("'%1' is not a paper that the sheet is laid out for. Give a4 or "
                               "letter.")
            .arg(first);
    case UsageFault::BadSeal:
        return CommandText::tr("'%1' is not a seal. Write its number, a colon and 8 to 64 of its "
                               "digits, as on the sheet: 118:9f3a2b7c01de44aa.")
            .arg(first);
    }
    Q_UNREACHABLE();
}

} // namespace

int exitCodeOf(const Failure& failure) {
    return std::holds_alternative<UsageError>(failure) ? 2 : 1;
}

QString lineOf(const Failure& failure) {
    const auto* usage = std::get_if<UsageError>(&failure);
    const QString text =
        usage != nullptr ? sentenceOf(*usage) : wording::line(std::get<Error>(failure));
    return QStringLiteral("coilbook: ") + text;
}

} // namespace coilbook
