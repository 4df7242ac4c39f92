#pragma once

#include "core/units/typed_force.h"

#include <QTableWidget>

#include <optional>

namespace coilbook {

/// A table of forces that is filled by typing digits and Enter: Enter goes on to the next cell, row
/// by row. Takes `.` or `,` as the decimal mark whatever the locale. Rows may be added by typing on
/// behind the last one.
class ForceTable : public QTableWidget {
    Q_OBJECT
public:
    explicit ForceTable(QWidget* parent = nullptr);

    /// A new row is there for typing whenever the last one has something in it.
    void setGrowing(bool growing);

    /// The first columns are typed; those behind them are for the program to fill.
    void setTypedColumns(int columns) { m_typedColumns = columns; }

    /// Empties all cells and gives the table that size.
    void reset(int rows, int columns);

    void setForce(int row, int column, const std::optional<TypedForce>& force);

    /// The cell as a force in `unit`; empty if blank or at fault.
    [[nodiscard]] std::optional<TypedForce> force(int row, int column, ForceUnit unit) const;

    [[nodiscard]] bool isBlank(int row, int column) const;

    /// A cell that the program fills: not to be typed in.
    void showText(int row, int column, const QString& text);

Q_SIGNALS:
    /// Somebody typed a cell.
    void typed();

protected:
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void onCellChanged();
    void goOn();
    void growWhereFull();

    int m_typedColumns = 1;
    bool m_growing = false;
};

} // namespace coilbook
