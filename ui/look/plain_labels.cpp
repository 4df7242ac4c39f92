#include "ui/look/plain_labels.h"

#include <QCoreApplication>
#include <QEvent>
#include <QLabel>

namespace coilbook {

PlainLabels::PlainLabels(QObject* parent)
    : QObject(parent) {
    QCoreApplication::instance()->installEventFilter(this);
}

bool PlainLabels::eventFilter(QObject* watched, QEvent* event) {
    // Each widget is polished once, before its size is asked for the first time.
    if (event->type() == QEvent::Polish) {
        auto* label = qobject_cast<QLabel*>(watched);
        if (label != nullptr && label->textFormat() == Qt::AutoText) {
            label->setTextFormat(Qt::PlainText);
        }
    }
    return QObject::eventFilter(watched, event);
}

} // namespace coilbook
