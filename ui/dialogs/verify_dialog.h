#pragma once

#include "core/domain/verify_report.h"

#include <QDialog>

class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace coilbook {

class LogbookSession;

/// Checks the open logbook as soon as it is shown and lists what was found; a seal noted on a sheet
/// can be asked about. Shown with open(): the check runs on the disk's thread.
class VerifyDialog : public QDialog {
    Q_OBJECT
public:
    explicit VerifyDialog(LogbookSession& session, QWidget* parent = nullptr);

private:
    void check();
    void checkSeal();
    void list(const VerifyReport& report);
    void setBusy(bool busy);

    LogbookSession& m_session;
    QLabel* m_outcome;
    QPlainTextEdit* m_list;
    QLineEdit* m_seal;
    QPushButton* m_ask;
    QPushButton* m_again;
    QLabel* m_answer;
};

} // namespace coilbook
