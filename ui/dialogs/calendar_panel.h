#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QLineEdit;

namespace coilbook {

class DateField;
class WholeNumberField;

/// The races to come of the selected engine. A planned race that was run is logged under Races.
class CalendarPanel : public RecordPanel {
    Q_OBJECT
public:
    CalendarPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    /// As it stands; a new one: a week after the last of the calendar, or from today.
    [[nodiscard]] PlannedRace raceOf(const QUuid& record) const;

    DateField* m_plannedOn;
    QLineEdit* m_venue;
    WholeNumberField* m_laps;
    QLineEdit* m_note;
    QCheckBox* m_withdrawn;
};

} // namespace coilbook
