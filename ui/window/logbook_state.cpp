#include "ui/window/logbook_state.h"

#include "core/services/logbook_session.h"
#include "core/wording/waiting_words.h"
#include "core/wording/wording.h"
#include "ui/widgets/message_strip.h"

#include <QDate>
#include <QFileDialog>
#include <QFileInfo>
#include <QStandardPaths>

#include <utility>

namespace coilbook {

LogbookState::LogbookState(QWidget& window, LogbookSession& session, MessageStrip& strip)
    : QObject(&window)
    , m_window(window)
    , m_session(session)
    , m_strip(strip) {
    connect(&session, &LogbookSession::opened, this, &LogbookState::tellReadOnly);
    connect(&session, &LogbookSession::writingStopped, this, &LogbookState::tellReadOnly);
    connect(&session, &LogbookSession::waitingChanged, this, &LogbookState::tellWaiting);
    connect(&session, &LogbookSession::canTakeOver, this, &LogbookState::tellCanTakeOver);
}

QString LogbookState::statusText() const {
    const QString file = QFileInfo(m_session.path()).fileName();
    const Waiting& waiting = m_session.waiting();
    if (!waiting.isEmpty()) {
        return tr("NOT yet in %1, waiting on this computer: %2.")
            .arg(file, wording::waitingCount(waiting.readings, waiting.others));
    }
    if (const std::optional<Error> why = m_session.readOnlyWhy()) {
        return why->fault == decltype(Error::fault)(StorageFault::HeldByWindow)
                   ? tr("Read only: %1 is being worked on elsewhere.").arg(file)
                   : tr("Read only: %1 cannot be written to, nothing can be entered.").arg(file);
    }
    return tr("All entries are saved in %1.").arg(file);
}

void LogbookState::tellReadOnly() {
    const std::optional<Error> why = m_session.readOnlyWhy();
    if (!why) {
        return;
    }
    const bool isHeld = why->fault == decltype(Error::fault)(StorageFault::HeldByWindow);
    if (isHeld) {
        m_strip.tell(MessageStrip::Kind::Notice, wording::readOnly(*why));
        return;
    }
    if (why->fault == decltype(Error::fault)(StorageFault::Damaged)) {
        m_strip.tell(MessageStrip::Kind::Fault, wording::readOnly(*why),
                     {{tr("Export what can be read…"), [this] {
                           Q_EMIT exportWanted();
                       }}});
        return;
    }
    m_strip.tell(MessageStrip::Kind::Fault, wording::readOnly(*why), {{tr("Try again"), [this] {
                                                                           m_session.takeOver();
                                                                       }}});
}

void LogbookState::tellCanTakeOver() {
    m_strip.tell(MessageStrip::Kind::Notice, wording::canTakeOver(),
                 {{tr("Work on it here"), [this] {
                       m_session.takeOver();
                   }}});
}

void LogbookState::tellWaiting() {
    const Waiting& waiting = m_session.waiting();
    const int readings = std::exchange(m_readings, waiting.readings);
    const int others = std::exchange(m_others, waiting.others);
    const QString logbook = m_session.path();
    const bool isSame = logbook == std::exchange(m_logbook, logbook);
    const MessageStrip::WayOut elsewhere{tr("Save what is waiting elsewhere…"), [this, logbook] {
                                             chooseWhereToSaveWaiting(logbook);
                                         }};
    if (!waiting.isEmpty() && waiting.why) {
        m_strip.tell(MessageStrip::Kind::Fault,
                     wording::waitingEntries(waiting.readings, waiting.others, *waiting.why),
                     {{tr("Try now"),
                       [this] {
                           m_session.putInNow();
                       }},
                      elsewhere});
    } else if (waiting.refused > 0) {
        m_strip.tell(MessageStrip::Kind::Fault,
                     wording::waitingRefused(waiting.refused, waiting.refusal),
                     {elsewhere, {tr("Drop it"), [this] {
                                      m_session.forgetRefused();
                                  }}});
    } else if (readings + others > 0 && isSame) {
        m_strip.tell(MessageStrip::Kind::Notice, wording::waitingDone(readings, others));
    } else if (readings + others > 0) {
        m_strip.dismiss(); // it goes on waiting for a logbook that is not open any more
    }
}

void LogbookState::chooseWhereToSaveWaiting(const QString& logbook) {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    auto* dialog = new QFileDialog(&m_window, tr("Where the waiting readings are written to"),
                                   folder, tr("Exchange files (*.csv)"));
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(QStringLiteral("csv"));
    dialog->setOption(QFileDialog::DontConfirmOverwrite); // nothing is ever overwritten
    dialog->selectFile(QStringLiteral("%1-waiting-%2.csv")
                           .arg(QFileInfo(logbook).completeBaseName(),
                                QDate::currentDate().toString(Qt::ISODate)));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QFileDialog::filesSelected, this, [this, logbook](const QStringList& paths) {
        saveWaiting(logbook, paths.constFirst());
    });
    dialog->open();
}

void LogbookState::saveWaiting(const QString& logbook, const QString& destination) {
    m_session.saveWaiting(
        logbook, destination, this, [this, logbook, destination](const Result<void>& result) {
            if (result) {
                m_strip.tell(MessageStrip::Kind::Notice,
                             tr("The readings that wait are written to %1, which an import takes. "
                                "They still go into the logbook by themselves when that is "
                                "possible.")
                                 .arg(destination));
                return;
            }
            m_strip.tell(MessageStrip::Kind::Fault, wording::line(result.error()),
                         {{tr("Choose another place…"), [this, logbook] {
                               chooseWhereToSaveWaiting(logbook);
                           }}});
        });
}

} // namespace coilbook
