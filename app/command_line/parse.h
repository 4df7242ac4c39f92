#pragma once

#include "app/command_line/command.h"

#include <QStringList>

namespace coilbook {

/// Sorts the words behind a command's name into arguments and options. Options may stand anywhere
/// up to a `--`, behind which every word is an argument.
[[nodiscard]] Outcome<Request> parseRequest(const Command& command, const QStringList& words);

/// Whether the words ask for the command's help: `--help` before any `--`.
[[nodiscard]] bool asksForHelp(const QStringList& words);

} // namespace coilbook
