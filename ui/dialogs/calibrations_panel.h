#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace coilbook {

class CalibrationChart;
class DateField;
class ForceTable;

/// The calibrations of the shop's testers: the table of the certificate, typed by keyboard, and the
/// curve that corrects readings by it.
class CalibrationsPanel : public RecordPanel {
    Q_OBJECT
public:
    CalibrationsPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    void addFields();
    void offerTesters();
    [[nodiscard]] ForceUnit unit() const;
    /// The table as typed so far; lines that are not whole are left out.
    [[nodiscard]] std::vector<CalibrationPoint> points() const;
    /// The first line that is neither whole nor empty.
    [[nodiscard]] std::optional<int> faultyLine() const;
    [[nodiscard]] Calibration typed() const;
    void showCurve();

    QComboBox* m_tester;
    DateField* m_on;
    QLineEdit* m_by;
    QLineEdit* m_certificate;
    QCheckBox* m_isDue;
    DateField* m_due;
    QComboBox* m_unit;
    QComboBox* m_degree;
    ForceTable* m_table;
    CalibrationChart* m_chart;
    QLabel* m_result;
    QCheckBox* m_withdrawn;
};

} // namespace coilbook
