#pragma once

#include "core/assessment/assessment.h"
#include "core/wording/quantities.h"

#include <QAbstractTableModel>

#include <memory>
#include <optional>
#include <vector>

namespace coilbook {

/// The assessed springs of an engine as a table, the most urgent first. Only looks up and formats.
class StandingTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column {
        PlaceColumn,
        SpringColumn,
        StandingColumn,
        MeasuredColumn,
        EstimatedColumn,
        PerRaceColumn,
        RacesLeftColumn,
        InspectionsColumn,
        ColumnCount
    };

    enum Role {
        SortRole = Qt::UserRole, ///< a number or text that orders the column
        MarkRole                 ///< StandingMark of the row
    };

    explicit StandingTableModel(QObject* parent = nullptr);

    /// Null empties the table.
    void setAssessment(std::shared_ptr<const Assessment> assessment, const Quantities& quantities);

    [[nodiscard]] const SpringAssessment& springAt(int row) const;
    /// -1: no spring there.
    [[nodiscard]] int rowOf(const Place& place) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] QString text(const SpringAssessment& spring, int column) const;
    [[nodiscard]] QVariant sortKey(const SpringAssessment& spring, int row, int column) const;

    std::shared_ptr<const Assessment> m_assessment;
    std::vector<std::size_t> m_order; ///< rows as indices into the assessment's springs
    Quantities m_quantities;
};

/// `3.1 (2.2 to 4.0)`, the mean alone where there are no bounds yet, or a dash.
[[nodiscard]] QString estimatedText(const SpringAssessment& spring, const Quantities& quantities);

/// `3 (2 to 5)`; counts beyond the horizon read `over 60`; a dash where nothing can be said.
[[nodiscard]] QString racesLeftText(const SpringAssessment& spring);

} // namespace coilbook
