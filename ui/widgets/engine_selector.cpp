#include "ui/widgets/engine_selector.h"

#include "core/support/text.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QLineEdit>
#include <QSignalBlocker>

#include <algorithm>

namespace coilbook {

EngineSelector::EngineSelector(QWidget* parent)
    : QComboBox(parent) {
    setEditable(true);
    setInsertPolicy(QComboBox::NoInsert);
    setMaxVisibleItems(16);
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(16);
    setAccessibleName(tr("Engine"));
    lineEdit()->setPlaceholderText(tr("Choose an engine"));
    completer()->setCompletionMode(QCompleter::PopupCompletion);
    completer()->setFilterMode(Qt::MatchContains);
    completer()->setCaseSensitivity(Qt::CaseInsensitive);
    lineEdit()->installEventFilter(this);
    completer()->popup()->installEventFilter(this); // after the completer's own, so asked first
    connect(this, &QComboBox::activated, this, &EngineSelector::choose);
}

EngineId EngineSelector::engineAt(int index) const {
    return EngineId(itemData(index).toUuid());
}

void EngineSelector::setEngines(const std::vector<EngineSummary>& engines) {
    const QSignalBlocker quiet(this);
    clear();
    std::vector<EngineSummary> sorted = engines;
    std::stable_partition(sorted.begin(), sorted.end(),
                          [](const EngineSummary& engine) { return !engine.retired; });
    for (const EngineSummary& engine : sorted) {
        const QString text = engine.retired ? tr("%1 (retired)").arg(engine.name) : engine.name;
        addItem(text, engine.id.uuid());
        if (!engine.serial.isEmpty()) {
            setItemData(count() - 1, tr("Seal or serial number %1").arg(engine.serial),
                        Qt::AccessibleDescriptionRole);
        }
    }
    setCurrentEngine(m_current);
}

void EngineSelector::setCurrentEngine(const EngineId& engine) {
    const QSignalBlocker quiet(this);
    m_current = engine;
    setCurrentIndex(engine.isNull() ? -1 : findData(engine.uuid()));
}

void EngineSelector::startTyping() {
    setFocus(Qt::ShortcutFocusReason);
    lineEdit()->selectAll();
}

void EngineSelector::choose(int index) {
    const EngineId engine = engineAt(index);
    if (!engine.isNull() && engine != m_current) {
        m_current = engine;
        Q_EMIT engineChosen(engine);
    }
    Q_EMIT left();
}

void EngineSelector::takeTyped() {
    const QString wanted = caseKey(normalised(lineEdit()->text()));
    int first = -1;
    for (int i = 0; i < count(); ++i) {
        const QString name = caseKey(itemText(i));
        if (name == wanted) {
            first = i;
            break;
        }
        if (first < 0 && !wanted.isEmpty() && name.contains(wanted)) {
            first = i;
        }
    }
    if (first < 0) {
        giveUp();
        return;
    }
    setCurrentIndex(first);
    choose(first);
}

void EngineSelector::giveUp() {
    setCurrentEngine(m_current);
    lineEdit()->setText(currentText());
    Q_EMIT left();
}

bool EngineSelector::handleKey(int key) {
    QAbstractItemView* popup = completer()->popup();
    const bool open = popup->isVisible();
    if (open && popup->currentIndex().isValid()) {
        return false; // the completer takes what is marked in its list
    }
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        popup->hide();
        takeTyped();
        return true;
    }
    if (key == Qt::Key_Escape && !open) {
        giveUp();
        return true;
    }
    return false;
}

bool EngineSelector::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress && handleKey(static_cast<QKeyEvent*>(event)->key())) {
        return true;
    }
    if (watched == lineEdit() && event->type() == QEvent::FocusOut) {
        // Half a name left behind must not look like the engine that is shown.
        const Qt::FocusReason reason = static_cast<QFocusEvent*>(event)->reason();
        if (reason != Qt::PopupFocusReason && reason != Qt::ActiveWindowFocusReason) {
            setCurrentEngine(m_current);
            lineEdit()->setText(currentText());
        }
    }
    return QComboBox::eventFilter(watched, event);
}

} // namespace coilbook
