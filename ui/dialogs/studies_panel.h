#pragma once

#include "ui/dialogs/record_panel.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace coilbook {

class DateField;
class ForceTable;

/// Repeatability studies, guided: name a few springs and the persons, say how many hits, then read
/// cell by cell; what it says of the tester, the persons and the springs stands below at once.
class StudiesPanel : public RecordPanel {
    Q_OBJECT
public:
    StudiesPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    void addFields();
    /// A few springs of the engine in view and the person at the screen: a start to change.
    [[nodiscard]] RepeatabilityStudy proposal() const;
    [[nodiscard]] ForceUnit unit() const;
    [[nodiscard]] RepeatabilityStudy typed() const;
    /// Gives the table the shape that springs, persons and hits ask for; what was read stays.
    void shapeTable();
    void putReadings(const RepeatabilityStudy& study);
    void showResult();
    [[nodiscard]] std::optional<int> faultyRow() const;

    QComboBox* m_tester;
    DateField* m_on;
    QLineEdit* m_springs;
    QLineEdit* m_persons;
    QSpinBox* m_hits;
    QComboBox* m_unit;
    ForceTable* m_table;
    QLabel* m_result;
    QLineEdit* m_note;
    QCheckBox* m_withdrawn;
};

} // namespace coilbook
