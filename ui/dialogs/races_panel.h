#pragma once

#include "ui/dialogs/record_panel.h"

class QComboBox;
class QLineEdit;

namespace coilbook {

class DateField;
class WholeNumberField;

/// The races of the selected engine.
class RacesPanel : public RecordPanel {
    Q_OBJECT
public:
    RacesPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    /// The race as it stands; for a new one what is known of it: the next number, today.
    [[nodiscard]] Race raceOf(const QUuid& record) const;
    bool accept(WholeNumberField* field, bool needed);

    WholeNumberField* m_number;
    DateField* m_racedOn;
    QLineEdit* m_venue;
    WholeNumberField* m_laps;
    WholeNumberField* m_peakRpm;
    QComboBox* m_overRev;
    QLineEdit* m_note;
};

} // namespace coilbook
