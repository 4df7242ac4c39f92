#pragma once

#include "ui/dialogs/record_panel.h"

namespace coilbook {

class DateField;
class WholeNumberField;

/// The inspections of the selected engine: their date and count of races.
class InspectionsPanel : public RecordPanel {
    Q_OBJECT
public:
    InspectionsPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    [[nodiscard]] Inspection inspectionOf(const QUuid& record) const;

    DateField* m_inspectedOn;
    WholeNumberField* m_races;
};

} // namespace coilbook
