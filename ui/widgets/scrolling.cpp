#include "ui/widgets/scrolling.h"

#include <QScrollArea>

namespace coilbook {

QScrollArea* scrolling(QWidget* page) {
    auto* area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidget(page);
    page->setAutoFillBackground(false);
    area->viewport()->setAutoFillBackground(false);
    return area;
}

} // namespace coilbook
