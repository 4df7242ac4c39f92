#include "ui/widgets/force_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>

namespace coilbook {

ForceTable::ForceTable(QWidget* parent)
    : QTableWidget(parent) {
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                    QAbstractItemView::EditKeyPressed);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setTabKeyNavigation(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    connect(this, &QTableWidget::cellChanged, this, &ForceTable::onCellChanged);
}

void ForceTable::setGrowing(bool growing) {
    m_growing = growing;
}

void ForceTable::reset(int rows, int columns) {
    const QSignalBlocker quiet(this);
    clearContents();
    setRowCount(rows);
    setColumnCount(columns);
}

void ForceTable::setForce(int row, int column, const std::optional<TypedForce>& force) {
    const QSignalBlocker quiet(this);
    QString text;
    if (force) {
        text = force->text().replace(QLatin1Char('.'), QLocale().decimalPoint());
    }
    auto* item = new QTableWidgetItem(text);
    item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setItem(row, column, item);
    growWhereFull();
}

bool ForceTable::isBlank(int row, int column) const {
    const QTableWidgetItem* cell = item(row, column);
    return cell == nullptr || cell->text().trimmed().isEmpty();
}

std::optional<TypedForce> ForceTable::force(int row, int column, ForceUnit unit) const {
    return isBlank(row, column) ? std::nullopt
                                : TypedForce::parse(item(row, column)->text().trimmed(), unit);
}

void ForceTable::showText(int row, int column, const QString& text) {
    const QSignalBlocker quiet(this);
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsEnabled);
    item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setItem(row, column, item);
}

void ForceTable::onCellChanged() {
    growWhereFull();
    Q_EMIT typed();
}

void ForceTable::growWhereFull() {
    if (!m_growing) {
        return;
    }
    const int last = rowCount() - 1;
    bool full = last < 0;
    for (int column = 0; column < m_typedColumns && last >= 0; ++column) {
        full = full || !isBlank(last, column);
    }
    if (full) {
        insertRow(last + 1);
    }
}

void ForceTable::goOn() {
    int row = currentRow();
    int column = currentColumn() + 1;
    if (column >= m_typedColumns) {
        column = 0;
        ++row;
    }
    if (row < rowCount()) {
        setCurrentCell(row, column);
    }
}

void ForceTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    QTableWidget::closeEditor(editor, hint);
    if (hint == QAbstractItemDelegate::SubmitModelCache) {
        goOn(); // by Enter
    }
}

void ForceTable::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && state() != QAbstractItemView::EditingState) {
        goOn(); // and not the dialog's default button
        event->accept();
        return;
    }
    const bool clears = event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace;
    if (clears && state() != QAbstractItemView::EditingState && currentItem() != nullptr &&
        currentColumn() < m_typedColumns) {
        currentItem()->setText({});
        event->accept();
        return;
    }
    QTableWidget::keyPressEvent(event);
}

} // namespace coilbook
