#include "ui/window/logbook_files.h"

#include "core/services/logbook_session.h"
#include "core/wording/waiting_words.h"
#include "core/wording/wording.h"
#include "ui/preferences.h"
#include "ui/widgets/message_strip.h"
#include "ui/window/logbook_state.h"

#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMimeData>
#include <QStandardPaths>
#include <QUrl>

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

const QString kSuffix = QStringLiteral("coilbook");

bool isLogbook(const QString& path) {
    return path.endsWith(QLatin1Char('.') + kSuffix, Qt::CaseInsensitive);
}

bool isTable(const QString& path) {
    return path.endsWith(QLatin1String(".csv"), Qt::CaseInsensitive);
}

QString documentsFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

} // namespace

LogbookFiles::LogbookFiles(QWidget& window, LogbookSession& session, Preferences& preferences,
                           MessageStrip& strip, LogbookState& state)
    : QObject(&window)
    , m_window(window)
    , m_session(session)
    , m_preferences(preferences)
    , m_strip(strip)
    , m_state(state) {
    connect(&session, &LogbookSession::openFailed, this, &LogbookFiles::explainOpenFailure);
    connect(&session, &LogbookSession::failed, this, &LogbookFiles::explainFailure);
    connect(&state, &LogbookState::exportWanted, this, &LogbookFiles::chooseExport);
    connect(&session, &LogbookSession::backupFailed, this, [this](const Error& error) {
        m_strip.tell(MessageStrip::Kind::Fault,
                     tr("The logbook is saved, but its automatic backup was not made: %1")
                         .arg(wording::line(error)),
                     {{tr("Back up elsewhere…"), [this] {
                           chooseBackup();
                       }}});
    });
    connect(&session, &LogbookSession::importFailed, this, &LogbookFiles::explainImportFailure);
    connect(&session, &LogbookSession::importFinished, this,
            [this](const QString& report) { m_strip.tell(MessageStrip::Kind::Notice, report); });
    connect(&session, &LogbookSession::opened, this, [this] {
        m_preferences.setLastLogbook(m_session.path());
        m_preferences.addRecentLogbook(m_session.path());
    });
}

QString LogbookFiles::demoPath() {
    const QDir folder(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
    return folder.filePath(QStringLiteral("demo.") + kSuffix);
}

void LogbookFiles::ask(QFileDialog* dialog, std::function<void(const QStringList&)> then) {
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QFileDialog::filesSelected, this, std::move(then));
    dialog->open();
}

void LogbookFiles::createNew() {
    auto* dialog = new QFileDialog(&m_window, tr("Where the new logbook is kept"),
                                   documentsFolder(), tr("Logbooks (*.%1)").arg(kSuffix));
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(kSuffix);
    dialog->setOption(QFileDialog::DontConfirmOverwrite); // nothing is ever overwritten
    ask(dialog, [this](const QStringList& paths) { create(paths.constFirst()); });
}

void LogbookFiles::create(const QString& path) {
    m_strip.dismiss();
    m_wanted = path;
    m_making = true;
    Q_EMIT opening(path);
    m_session.createLogbook(path);
}

void LogbookFiles::openOther() {
    auto* dialog = new QFileDialog(&m_window, tr("Open a logbook"), documentsFolder(),
                                   tr("Logbooks (*.%1);;All files (*)").arg(kSuffix));
    dialog->setFileMode(QFileDialog::ExistingFile);
    ask(dialog, [this](const QStringList& paths) { open(paths.constFirst()); });
}

void LogbookFiles::open(const QString& path) {
    m_strip.dismiss();
    m_wanted = QFileInfo(path).absoluteFilePath();
    m_making = false;
    Q_EMIT opening(m_wanted);
    m_session.openLogbook(m_wanted);
}

void LogbookFiles::openDemo() {
    const QString path = demoPath();
    if (QFileInfo::exists(path)) {
        open(path);
        return;
    }
    m_strip.dismiss();
    QDir().mkpath(QFileInfo(path).absolutePath());
    m_wanted = path;
    m_making = false;
    Q_EMIT opening(path);
    m_session.createDemo(path);
}

void LogbookFiles::chooseImport() {
    auto* dialog = new QFileDialog(&m_window, tr("Import files"), documentsFolder(),
                                   tr("Exchange files (*.csv);;All files (*)"));
    dialog->setFileMode(QFileDialog::ExistingFiles);
    ask(dialog, [this](const QStringList& paths) { import(paths); });
}

void LogbookFiles::import(const QStringList& paths) {
    m_strip.dismiss();
    Q_EMIT importStarted(static_cast<int>(paths.size()));
    m_session.importFiles(paths);
}

void LogbookFiles::chooseExport() {
    auto* dialog =
        new QFileDialog(&m_window, tr("Folder for the exchange files"), documentsFolder());
    dialog->setFileMode(QFileDialog::Directory);
    dialog->setOption(QFileDialog::ShowDirsOnly);
    ask(dialog, [this](const QStringList& paths) { exportTo(paths.constFirst()); });
}

void LogbookFiles::exportTo(const QString& folder) {
    m_strip.dismiss();
    m_session.exportTo(folder, this, [this, folder](const Result<void>& result) {
        if (result) {
            m_strip.tell(MessageStrip::Kind::Notice,
                         tr("Wrote races.csv, readings.csv and logbook.json into %1.").arg(folder));
            return;
        }
        m_strip.tell(MessageStrip::Kind::Fault, wording::line(result.error()),
                     {{tr("Choose another folder…"), [this] {
                           chooseExport();
                       }}});
    });
}

void LogbookFiles::chooseBackup() {
    const QFileInfo logbook(m_session.path());
    const QString name = QStringLiteral("%1-%2").arg(logbook.completeBaseName(),
                                                     QDate::currentDate().toString(Qt::ISODate));
    auto* dialog = new QFileDialog(&m_window, tr("Where the copy is kept"), documentsFolder(),
                                   tr("Logbooks (*.%1)").arg(kSuffix));
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(kSuffix);
    dialog->setOption(QFileDialog::DontConfirmOverwrite); // nothing is ever overwritten
    dialog->selectFile(QStringLiteral("%1.%2").arg(name, kSuffix));
    ask(dialog, [this](const QStringList& paths) { backUp(paths.constFirst()); });
}

void LogbookFiles::backUp(const QString& destination) {
    m_strip.dismiss();
    m_session.backUp(destination, this, [this, destination](const Result<void>& result) {
        if (result) {
            m_strip.tell(
                MessageStrip::Kind::Notice,
                tr("Backed up to %1. Keep it on another disk than the logbook.").arg(destination));
            return;
        }
        m_strip.tell(MessageStrip::Kind::Fault, wording::line(result.error()),
                     {{tr("Choose another place…"), [this] {
                           chooseBackup();
                       }}});
    });
}

void LogbookFiles::chooseSecondPlace() {
    const QString now = m_preferences.secondBackupPlace();
    auto* dialog = new QFileDialog(&m_window, tr("Folder for a second automatic backup"),
                                   now.isEmpty() ? documentsFolder() : now);
    dialog->setFileMode(QFileDialog::Directory);
    dialog->setOption(QFileDialog::ShowDirsOnly);
    ask(dialog, [this](const QStringList& paths) { setSecondPlace(paths.constFirst()); });
}

void LogbookFiles::setSecondPlace(const QString& folder) {
    m_preferences.setSecondBackupPlace(folder);
    m_strip.tell(MessageStrip::Kind::Notice,
                 tr("From now on automatic backups go to %1 as well, whenever it is there. Choose "
                    "a folder on another disk than the logbook.")
                     .arg(folder),
                 {{tr("No second place"), [this] {
                       m_preferences.setSecondBackupPlace({});
                   }}});
}

bool LogbookFiles::canTake(const QMimeData& data) {
    const QStringList paths = pathsIn(data);
    return std::any_of(paths.begin(), paths.end(),
                       [](const QString& path) { return isLogbook(path) || isTable(path); });
}

QStringList LogbookFiles::pathsIn(const QMimeData& data) {
    QStringList paths;
    const QList<QUrl> urls = data.urls();
    for (const QUrl& url : urls) {
        if (url.isLocalFile()) {
            paths << url.toLocalFile();
        }
    }
    return paths;
}

void LogbookFiles::take(const QStringList& paths) {
    const auto count = [&paths](bool (*is)(const QString&)) {
        return std::count_if(paths.begin(), paths.end(), is);
    };
    if (count(isLogbook) == 1 && paths.size() == 1) {
        open(paths.constFirst());
        return;
    }
    if (count(isTable) != paths.size()) {
        m_strip.tell(MessageStrip::Kind::Fault,
                     tr("Drop either one logbook to open it, or CSV files to import them. Nothing "
                        "was done with these."));
        return;
    }
    if (!m_session.isOpen()) {
        m_strip.tell(MessageStrip::Kind::Fault,
                     tr("Open the logbook first that these readings belong into, or make a new "
                        "one; then drop the files again."));
        return;
    }
    if (m_session.isReadOnly()) {
        m_strip.tell(MessageStrip::Kind::Fault,
                     tr("This logbook cannot be written to, so nothing was imported. Allow writing "
                        "to its file, or open another one."));
        return;
    }
    import(paths);
}

void LogbookFiles::explainOpenFailure(const Error& error) {
    QString sentence = wording::line(error);
    const Waiting& waiting = m_session.waitingForRefused();
    const auto* fault = std::get_if<StorageFault>(&error.fault);
    std::vector<MessageStrip::WayOut> waysOut;
    const QString path = m_wanted;
    if (m_making && fault != nullptr && *fault == StorageFault::AlreadyExists) {
        waysOut.push_back({tr("Open that file"), [this, path] {
                               open(path);
                           }});
        waysOut.push_back({tr("Choose another name…"), [this] {
                               createNew();
                           }});
    } else {
        waysOut.push_back({tr("Try again"), [this, path, making = m_making] {
                               if (making) {
                                   create(path);
                               } else {
                                   open(path);
                               }
                           }});
        waysOut.push_back({tr("Choose another file…"), [this] {
                               openOther();
                           }});
    }
    if (!waiting.isEmpty()) {
        sentence +=
            QLatin1Char(' ') + wording::waitingForUnopened(waiting.readings, waiting.others);
        waysOut.push_back({tr("Save what is waiting elsewhere…"), [this, path] {
                               m_state.chooseWhereToSaveWaiting(path);
                           }});
    }
    m_strip.tell(MessageStrip::Kind::Fault, sentence, std::move(waysOut));
    Q_EMIT openRefused(sentence);
}

void LogbookFiles::explainImportFailure(const Error& error) {
    const auto* fault = std::get_if<InputFault>(&error.fault);
    if (fault != nullptr && *fault == InputFault::Cancelled) {
        m_strip.tell(MessageStrip::Kind::Notice, wording::sentence(error)); // as was asked for
        return;
    }
    m_strip.tell(MessageStrip::Kind::Fault, wording::line(error),
                 {{tr("Choose other files…"), [this] {
                       chooseImport();
                   }}});
}

void LogbookFiles::explainFailure(const Error& error) {
    // A rule of the logbook is explained where it was broken, beside the field.
    if (!std::holds_alternative<LogbookFault>(error.fault)) {
        m_strip.tell(MessageStrip::Kind::Fault, wording::line(error));
    }
}

} // namespace coilbook
