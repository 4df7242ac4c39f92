#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace coilbook {

class DateField;
class QuantityField;
class WholeNumberField;

/// What was put on the shelf of the selected engine and what was thrown out. A new entry is a new
/// spare, or further news of a spring that stands in no place.
class ShelfPanel : public RecordPanel {
    Q_OBJECT
public:
    ShelfPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    /// The newest entry of that spring; where there is none yet, the form of a new one for it.
    void selectSpring(const SpringId& spring);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    [[nodiscard]] Shelving shelvingOf(const QUuid& record) const;
    [[nodiscard]] bool readHeight(Shelving& shelving);

    QComboBox* m_label;
    QLineEdit* m_part;
    QLineEdit* m_batch;
    QComboBox* m_to;
    DateField* m_shelvedOn;
    QuantityField* m_pressure;
    QLineEdit* m_height;
    WholeNumberField* m_races;
    QLineEdit* m_reason;
    QCheckBox* m_withdrawn;
};

} // namespace coilbook
