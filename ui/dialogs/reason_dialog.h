#pragma once

#include "core/services/logbook_session.h"

#include <QDialog>

#include <functional>

class QPushButton;

namespace coilbook {

class AuthorFields;
class FaultForm;
class Preferences;

/// Asks why before something is amended that needs no other field, such as retiring an engine.
class ReasonDialog : public QDialog {
    Q_OBJECT
public:
    using MakeChange = std::function<Change(const Authorship&)>;

    /// `advice` says what will happen, `action` is the word on the button.
    ReasonDialog(LogbookSession& session, Preferences& preferences, const QString& title,
                 const QString& advice, const QString& action, MakeChange makeChange,
                 QWidget* parent = nullptr);

private:
    void save();

    LogbookSession& m_session;
    MakeChange m_makeChange;
    FaultForm* m_form;
    AuthorFields* m_author;
    QPushButton* m_save;
};

} // namespace coilbook
