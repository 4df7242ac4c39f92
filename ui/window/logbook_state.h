#pragma once

#include "core/support/error.h"

#include <QObject>
#include <QString>

class QFileDialog;
class QWidget;

namespace coilbook {

class LogbookSession;
class MessageStrip;

/// Says in the message strip how it stands with the open logbook when that is not as it should be:
/// that it can only be read and why, that entries wait, that it can be worked on here again.
class LogbookState : public QObject {
    Q_OBJECT
public:
    /// All must outlive this; file dialogs stand over `window`.
    LogbookState(QWidget& window, LogbookSession& session, MessageStrip& strip);

    /// One line for the foot of the window.
    [[nodiscard]] QString statusText() const;

    /// Asks where the readings that wait for that logbook are written to, and writes them.
    void chooseWhereToSaveWaiting(const QString& logbook);
    void saveWaiting(const QString& logbook, const QString& destination);

Q_SIGNALS:
    /// The damaged logbook is to be exported as far as it can be read.
    void exportWanted();

private:
    void tellReadOnly();
    void tellWaiting();
    void tellCanTakeOver();

    QWidget& m_window;
    LogbookSession& m_session;
    MessageStrip& m_strip;
    QString m_logbook;  ///< for which something waited last
    int m_readings = 0; ///< that did
    int m_others = 0;
};

} // namespace coilbook
