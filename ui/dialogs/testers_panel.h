#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QLineEdit;

namespace coilbook {

class DateField;
class QuantityField;

/// The shop's testers: range, graduation and when each was last calibrated.
class TestersPanel : public RecordPanel {
    Q_OBJECT
public:
    TestersPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    bool accept(QuantityField* field);

    QLineEdit* m_name;
    QuantityField* m_range;
    QuantityField* m_graduation;
    QCheckBox* m_calibrated;
    DateField* m_calibratedOn;
    QLineEdit* m_note;
};

} // namespace coilbook
