#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace coilbook {

class DateField;
class WholeNumberField;

/// Work on the selected engine that changed the pressure of a spring without wearing it.
class LevelChangesPanel : public RecordPanel {
    Q_OBJECT
public:
    LevelChangesPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    /// As it stands; a new one: today, after the races that the engine has run.
    [[nodiscard]] LevelChange changeOf(const QUuid& record) const;
    void offerSprings();

    QComboBox* m_spring;
    QComboBox* m_kind;
    DateField* m_changedOn;
    WholeNumberField* m_engineRaces;
    QLineEdit* m_note;
    QCheckBox* m_withdrawn;
};

} // namespace coilbook
