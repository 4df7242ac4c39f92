#pragma once

#include "core/support/error.h"

#include <QObject>
#include <QStringList>

#include <functional>

class QFileDialog;
class QMimeData;
class QWidget;

namespace coilbook {

class LogbookSession;
class LogbookState;
class MessageStrip;
class Preferences;

/// Everything that has to do with files: asks which, hands them to the session, and says in the
/// message strip how it went, with the way out when it did not. Nothing here waits.
class LogbookFiles : public QObject {
    Q_OBJECT
public:
    /// All must outlive this; file dialogs stand over `window`.
    LogbookFiles(QWidget& window, LogbookSession& session, Preferences& preferences,
                 MessageStrip& strip, LogbookState& state);

    void createNew();
    void openOther();
    void open(const QString& path);
    /// Opens the demo logbook, which is written first if it is not there yet.
    void openDemo();
    void chooseImport();
    void import(const QStringList& paths);
    void chooseExport();
    void exportTo(const QString& folder);
    /// Asks where the copy goes, offering today's date in its name.
    void chooseBackup();
    void backUp(const QString& destination);
    /// Asks for the folder that gets a second automatic backup whenever it is there.
    void chooseSecondPlace();
    void setSecondPlace(const QString& folder);

    /// Files dropped on the window: one logbook is opened, CSV files are imported.
    void take(const QStringList& paths);
    /// Whether take() would do anything with that.
    [[nodiscard]] static bool canTake(const QMimeData& data);
    [[nodiscard]] static QStringList pathsIn(const QMimeData& data);

    /// Where the demo logbook of this user is kept.
    [[nodiscard]] static QString demoPath();

Q_SIGNALS:
    void opening(const QString& path);
    /// The file could not be opened; the strip has said so.
    void openRefused(const QString& sentence);
    void importStarted(int files);

private:
    void ask(QFileDialog* dialog, std::function<void(const QStringList&)> then);
    void create(const QString& path);
    void explainOpenFailure(const Error& error);
    void explainImportFailure(const Error& error);
    void explainFailure(const Error& error);

    QWidget& m_window;
    LogbookSession& m_session;
    Preferences& m_preferences;
    MessageStrip& m_strip;
    LogbookState& m_state;
    QString m_wanted;      ///< file that is being opened or made
    bool m_making = false; ///< it is to be a new one
};

} // namespace coilbook
