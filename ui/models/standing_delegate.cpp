#include "ui/models/standing_delegate.h"

#include "ui/drawing/standing_mark.h"
#include "ui/models/standing_table_model.h"

#include <QPainter>
#include <QWidget>

namespace coilbook {

void StandingDelegate::initStyleOption(QStyleOptionViewItem* option,
                                       const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    const QVariant mark = index.data(StandingTableModel::MarkRole);
    if (!mark.canConvert<StandingMark>()) {
        return;
    }
    const int height = option->fontMetrics.height();
    const QSize size((height + 1) / 2 + 2, height);
    const double ratio = option->widget != nullptr ? option->widget->devicePixelRatioF() : 1.0;
    QPixmap picture(size * ratio);
    picture.setDevicePixelRatio(ratio);
    const Scheme scheme = schemeFor(option->palette);
    // The mark's colours are made for the panel, not for the ground of a selected row.
    const bool selected = option->state.testFlag(QStyle::State_Selected);
    picture.fill(selected ? scheme.panel : QColor(Qt::transparent));
    QPainter painter(&picture);
    drawStandingMark(painter, QRectF(1.0, 0.0, size.width() - 2.0, size.height()),
                     mark.value<StandingMark>(), scheme);
    painter.end();
    // The same picture in every state: a tinted mark could be taken for another standing.
    QIcon icon(picture);
    icon.addPixmap(picture, QIcon::Selected);
    icon.addPixmap(picture, QIcon::Disabled);
    option->icon = icon;
    option->decorationSize = size;
    option->features |= QStyleOptionViewItem::HasDecoration;
}

} // namespace coilbook
