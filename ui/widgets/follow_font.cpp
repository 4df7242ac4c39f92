#include "ui/widgets/follow_font.h"

#include "ui/widgets/physical_size.h"

#include <QAbstractButton>
#include <QEvent>

#include <functional>
#include <utility>

namespace coilbook {

namespace {

/// Does something now and again whenever the font of a widget changes.
class FontWatcher : public QObject {
public:
    FontWatcher(QWidget& watched, QObject* parent, std::function<void()> adopt)
        : QObject(parent)
        , m_adopt(std::move(adopt)) {
        watched.installEventFilter(this);
        m_adopt();
    }

    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::FontChange) {
            m_adopt();
        }
        return QObject::eventFilter(watched, event);
    }

private:
    std::function<void()> m_adopt;
};

} // namespace

// A watcher belongs to the widget that it adapts and ends with it.

void followFont(QWidget& widget, QWidget& leader, double factor) {
    new FontWatcher(leader, &widget,
                    [&widget, &leader, factor] { widget.setFont(scaled(leader.font(), factor)); });
}

void keepTarget(QAbstractButton& button) {
    new FontWatcher(button, &button, [&button] {
        button.setMinimumHeight(targetHeight(button));
        const QFontMetrics metrics = button.fontMetrics();
        button.setMinimumWidth(metrics.horizontalAdvance(button.text()) + metrics.height());
    });
}

void keepTargetHeight(QWidget& widget) {
    new FontWatcher(widget, &widget, [&widget] { widget.setMinimumHeight(targetHeight(widget)); });
}

} // namespace coilbook
