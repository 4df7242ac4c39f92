#pragma once

#include "app/command_line/failure.h"
#include "app/command_line/output.h"

#include <QHash>
#include <QString>
#include <QStringList>

#include <functional>
#include <optional>
#include <vector>

namespace coilbook {

/// An option that a command knows, as `--name VALUE` or `--name=VALUE`.
struct Option {
    QString name;  ///< without the dashes
    QString value; ///< what the value stands for; empty: the option takes none
    QString help;
    bool isNeeded = false;
};

/// What was given to a command: its arguments in order, and its options by name.
struct Request {
    QStringList arguments;
    QHash<QString, QString> options;

    [[nodiscard]] bool has(const QString& option) const { return options.contains(option); }

    [[nodiscard]] std::optional<QString> value(const QString& option) const {
        const auto found = options.constFind(option);
        return found == options.constEnd() ? std::nullopt : std::optional(*found);
    }
};

/// One command of the program. What it has to say goes to the output; it is printed when the
/// command returns, also where it failed.
struct Command {
    QString name;
    QStringList arguments; ///< what they stand for; all are needed
    bool repeatsLast = false;
    QString summary; ///< one line for the list of commands
    QString details; ///< what else one should know; may be empty
    std::vector<Option> options;
    bool needsFonts = false; ///< draws, so it runs on a platform without a screen
    std::function<Outcome<void>(const Request&, Output&)> run;
};

/// All of them, in the order in which they are listed.
[[nodiscard]] std::vector<Command> commands();

[[nodiscard]] Command demoCommand();
[[nodiscard]] Command importCommand();
[[nodiscard]] Command exportCommand();
[[nodiscard]] Command assessCommand();
[[nodiscard]] Command sheetCommand();
[[nodiscard]] Command verifyCommand();
[[nodiscard]] Command backupCommand();

} // namespace coilbook
