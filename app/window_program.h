#pragma once

#include <QString>

class QApplication;

namespace coilbook {

/// The windowed program: builds the preferences, the session and the window around the application
/// and runs it until the window is closed. Opens `file`; when empty, the logbook last used, or the
/// empty state if there is none. Returns the exit code for main().
int runWindow(QApplication& application, const QString& file);

} // namespace coilbook
