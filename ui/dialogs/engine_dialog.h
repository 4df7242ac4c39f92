#pragma once

#include "core/services/logbook_session.h"

#include <QDialog>

#include <optional>

class QPushButton;
class QTabWidget;

namespace coilbook {

class AuthorFields;
class EngineFactsForm;
class EngineLayoutForm;
class Preferences;
class StartingSetForm;

/// Sets up a new engine, or amends the settings of one. Shown with open(): nothing waits for it.
class EngineDialog : public QDialog {
    Q_OBJECT
public:
    /// Without `engine`: a new one.
    EngineDialog(LogbookSession& session, Preferences& preferences,
                 const std::optional<Engine>& engine, QWidget* parent = nullptr);

Q_SIGNALS:
    /// The logbook has it on the disk.
    void saved(const coilbook::EngineId& engine);

private:
    void save();
    void finish(const Result<void>& result);
    void tellLapsMissing();
    void refuse(QWidget* page, QWidget* field, const QString& sentence);

    LogbookSession& m_session;
    std::optional<Engine> m_amended;
    Engine m_engine; ///< as it shall be
    QTabWidget* m_pages;
    EngineFactsForm* m_facts;
    EngineLayoutForm* m_layout;
    StartingSetForm* m_springs = nullptr; ///< new engines only
    AuthorFields* m_author = nullptr;     ///< amendments only
    QPushButton* m_save = nullptr;
};

} // namespace coilbook
