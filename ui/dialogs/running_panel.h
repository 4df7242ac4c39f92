#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QLineEdit;

namespace coilbook {

class DateField;
class WholeNumberField;

/// Running of the selected engine that is no race and wears its springs all the same: test days,
/// dyno pulls.
class RunningPanel : public RecordPanel {
    Q_OBJECT
public:
    RunningPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    /// As it stands; a new one: today, after the races that the engine has run.
    [[nodiscard]] Running runningOf(const QUuid& record) const;
    void offerAmount();

    DateField* m_ranOn;
    WholeNumberField* m_engineRaces;
    QComboBox* m_measure;
    WholeNumberField* m_laps;
    QDoubleSpinBox* m_part;
    QLineEdit* m_note;
    QCheckBox* m_withdrawn;
};

} // namespace coilbook
