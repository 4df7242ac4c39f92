#include "app/window_program.h"

#include "core/services/logbook_session.h"
#include "core/support/clock.h"
#include "ui/look/icons.h"
#include "ui/look/theme.h"
#include "ui/main_window.h"
#include "ui/preferences.h"

#include <QApplication>
#include <QDir>
#include <QStandardPaths>

namespace coilbook {

int runWindow(QApplication& application, const QString& file) {
    const QString name = QStringLiteral("coilbook");
    QSettings settings(QSettings::IniFormat, QSettings::UserScope, name, name);
    Preferences preferences(settings);
    const Theme theme(application, preferences);
    QApplication::setWindowIcon(icon(Picture::Coil));

    const SystemClock clock;
    LogbookSession session(clock);
    const QDir ownData(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
    session.keepWaiting(ownData.filePath(QStringLiteral("waiting.sqlite")));
    const auto keepBackups = [&] {
        session.keepBackups(ownData.filePath(QStringLiteral("backups")),
                            preferences.secondBackupPlace());
    };
    keepBackups();
    QObject::connect(&preferences, &Preferences::secondBackupPlaceChanged, &session, keepBackups);
    MainWindow window(session, preferences);
    window.show();
    const QString path = file.isEmpty() ? preferences.lastLogbook() : file;
    if (!path.isEmpty()) {
        window.openLogbook(path);
    }
    return QApplication::exec();
}

} // namespace coilbook
