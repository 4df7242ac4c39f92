#pragma once

#include "core/domain/changes.h"

#include <QString>
#include <QWidget>

#include <utility>
#include <vector>

class QCheckBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace coilbook {

class DateField;
class WholeNumberField;

/// The springs that stand in a new engine: a label for each place, since when, and after how many
/// races. An empty label leaves its place without a spring for now.
class StartingSetForm : public QWidget {
    Q_OBJECT
public:
    explicit StartingSetForm(QWidget* parent = nullptr);

    /// Lays the fields out as the banks are; labels typed already stay with their places.
    void setLayoutOf(const EngineLayout& layout);

    /// Puts springs and fittings into `change`, whose engine has its id. False when a label stands
    /// twice or the count is not a number; the form says which.
    [[nodiscard]] bool readInto(AddEngine& change);

private:
    bool refuse(QLineEdit* field, const QString& sentence);

    QCheckBox* m_wanted;
    DateField* m_fittedOn;
    WholeNumberField* m_races;
    QLineEdit* m_part;
    QWidget* m_places;
    QGridLayout* m_grid;
    QLabel* m_fault;
    std::vector<std::pair<Place, QLineEdit*>> m_labels;
};

} // namespace coilbook
