#pragma once

#include <QStyledItemDelegate>

namespace coilbook {

/// Draws the standing mark before the standing's words; see StandingTableModel::MarkRole.
class StandingDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;
};

} // namespace coilbook
