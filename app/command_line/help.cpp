#include "app/command_line/help.h"

#include "app/command_line/text.h"

#include <algorithm>

namespace coilbook {

namespace {

constexpr qsizetype kIndent = 2;
constexpr qsizetype kGap = 3;

/// Two columns: what is written, and what it does.
QStringList inColumns(const std::vector<std::pair<QString, QString>>& rows) {
    qsizetype width = 0;
    for (const auto& [left, right] : rows) {
        width = std::max(width, left.size());
    }
    QStringList lines;
    for (const auto& [left, right] : rows) {
        lines << QString(kIndent, QLatin1Char(' ')) + left.leftJustified(width + kGap) + right;
    }
    return lines;
}

QString written(const Option& option) {
    const QString name = QStringLiteral("--") + option.name;
    return option.value.isEmpty() ? name : name + QLatin1Char(' ') + option.value;
}

QString synopsis(const Command& command) {
    QStringList words{QStringLiteral("coilbook"), command.name};
    words += command.arguments;
    if (command.repeatsLast) {
        words.last() += QChar(0x2026);
    }
    for (const Option& option : command.options) {
        words << (option.isNeeded ? written(option)
                                  : QLatin1Char('[') + written(option) + QLatin1Char(']'));
    }
    return words.join(QLatin1Char(' '));
}

} // namespace

QString helpOnProgram(const std::vector<Command>& commands) {
    std::vector<std::pair<QString, QString>> rows;
    for (const Command& command : commands) {
        rows.emplace_back(command.name, command.summary);
    }
    QStringList lines{
        CommandText::tr("Coilbook keeps the valve springs of race engines: what each one pushes, "
                        "what it has lost,"),
        CommandText::tr("and which to swap before the next race."),
        QString(),
        CommandText::tr("Windows:"),
    };
    lines += inColumns({
        {QStringLiteral("coilbook"), CommandText::tr("opens the logbook last used")},
        {QStringLiteral("coilbook FILE"), CommandText::tr("opens FILE")},
    });
    lines << QString() << CommandText::tr("Commands, without a window:");
    lines += inColumns(rows);
    lines << QString()
          << CommandText::tr("'coilbook COMMAND --help' tells more of each; 'coilbook --version' "
                             "names the version.")
          << CommandText::tr("Exit codes: 0 done, 1 the work failed, 2 the command line is wrong.");
    return lines.join(QLatin1Char('\n'));
}

QString helpOn(const Command& command) {
    QStringList lines{synopsis(command), QString(), command.summary};
    if (!command.details.isEmpty()) {
        lines << command.details;
    }
    if (!command.options.empty()) {
        std::vector<std::pair<QString, QString>> rows;
        for (const Option& option : command.options) {
            rows.emplace_back(written(option), option.help);
        }
        lines << QString();
        lines += inColumns(rows);
    }
    return lines.join(QLatin1Char('\n'));
}

} // namespace coilbook
