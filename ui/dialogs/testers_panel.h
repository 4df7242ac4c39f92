#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace coilbook {

class AccuracyField;
class DateField;
class QuantityField;

/// The shop's testers: range, graduation, accuracy and zero, and what each is good for.
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
    void addFields();
    bool accept(QuantityField* field);
    /// The form as a tester; fields at fault are left out.
    [[nodiscard]] Tester typed() const;
    [[nodiscard]] std::optional<ZeroOffset> zeroOffset() const;
    [[nodiscard]] std::optional<Force> usualPressure() const;
    [[nodiscard]] QString calibrationOf(const Tester& tester) const;
    /// What the tester in the form is good for, in words.
    void showSuitability();

    QLineEdit* m_name;
    QuantityField* m_range;
    QuantityField* m_graduation;
    QCheckBox* m_calibrated;
    DateField* m_calibratedOn;
    QLineEdit* m_note;
    QComboBox* m_unit;
    AccuracyField* m_accuracy;
    QLineEdit* m_zero;
    QCheckBox* m_corrects;
    QLabel* m_suitability;
    QUuid m_shown;       ///< the record in the form
    QString m_zeroShown; ///< text as set; until it is edited the zero is what it was, to the digit
    std::optional<ZeroOffset> m_zeroSet;
};

} // namespace coilbook
