#include "app/command_line/run.h"
#include "app/window_program.h"

#include <QApplication>

namespace {

/// Without one Qt ends the program with an abort and a page of advice on plug-ins.
bool hasDisplay() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

} // namespace

int main(int argc, char** argv) {
    QCoreApplication::setApplicationName(QStringLiteral("coilbook"));
    QCoreApplication::setApplicationVersion(QStringLiteral(COILBOOK_VERSION));
    const auto wish = coilbook::runCommandLine(argc, argv);
    if (const int* exitCode = std::get_if<int>(&wish)) {
        return *exitCode;
    }
    if (!hasDisplay()) {
        return coilbook::reportNoDisplay();
    }
    QApplication application(argc, argv);
    return coilbook::runWindow(application, std::get<coilbook::OpenWindow>(wish).file);
}
