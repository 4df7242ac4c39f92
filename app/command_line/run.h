#pragma once

#include <QString>

#include <variant>

namespace coilbook {

/// What the command line asks for when it is not a command: the window, on a file or (empty) on the
/// logbook last used.
struct OpenWindow {
    QString file;
};

/// Runs the command that the command line names, without a display, and returns the exit code; or
/// tells that a window is wanted. Call it before any QCoreApplication is made.
[[nodiscard]] std::variant<int, OpenWindow> runCommandLine(int& argc, char** argv);

/// Prints the one line of a failure that is not a command's, and returns its exit code.
int reportNoDisplay();

} // namespace coilbook
