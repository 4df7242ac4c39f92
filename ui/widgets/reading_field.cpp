#include "ui/widgets/reading_field.h"

#include "ui/drawing/scheme.h"
#include "ui/widgets/physical_size.h"

#include <QPainter>

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

/// Legible from two metres.
constexpr double kDigitMillimetres = 16.0;
constexpr int kBorder = 4;
/// The longest reading anybody takes.
const QString kWidest = QStringLiteral("8888.88");

} // namespace

ReadingField::ReadingField(QWidget* parent)
    : QLineEdit(parent) {
    setFrame(false);
    setAlignment(Qt::AlignRight);
    setMaxLength(20);
    setTextMargins(kBorder * 2, kBorder, kBorder * 2, kBorder);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Reading"));
    adoptFont();
}

void ReadingField::hold() {
    m_held = true;
}

void ReadingField::release() {
    m_held = false;
    for (std::unique_ptr<QKeyEvent>& key : std::exchange(m_keys, {})) {
        if (m_held) {
            m_keys.push_back(std::move(key));
        } else {
            keyPressEvent(key.get());
        }
    }
}

void ReadingField::releaseAndForget() {
    m_held = false;
    m_keys.clear();
}

QSize ReadingField::sizeHint() const {
    const QFontMetrics metrics(font());
    // Not the line spacing, which some fonts have twice as tall as their digits.
    const double digit = generousPixelsOf(kDigitMillimetres, *this);
    return {metrics.horizontalAdvance(kWidest) + 8 * kBorder,
            static_cast<int>(digit * 1.6) + 4 * kBorder};
}

QSize ReadingField::minimumSizeHint() const {
    return sizeHint();
}

bool ReadingField::event(QEvent* event) {
    // With nothing of its own to undo the field leaves Ctrl+Z to the window.
    if (event->type() == QEvent::ShortcutOverride && !isUndoAvailable() && !isRedoAvailable()) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            event->ignore();
            return true;
        }
    }
    return QLineEdit::event(event);
}

void ReadingField::keyPressEvent(QKeyEvent* event) {
    if (m_held) {
        m_keys.push_back(std::make_unique<QKeyEvent>(event->type(), event->key(),
                                                     event->modifiers(), event->text()));
        return;
    }
    const bool plain =
        (event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier)) == Qt::NoModifier;
    if (!plain || !tellMeaning(event->key())) {
        QLineEdit::keyPressEvent(event);
    }
}

bool ReadingField::tellMeaning(int key) {
    switch (key) {
    case Qt::Key_Enter:
    case Qt::Key_Return:
        Q_EMIT committed();
        return true;
    case Qt::Key_Plus:
        Q_EMIT furtherCommitted();
        return true;
    case Qt::Key_Minus:
        Q_EMIT skipped();
        return true;
    case Qt::Key_Asterisk:
        Q_EMIT retestToggled();
        return true;
    case Qt::Key_Slash:
        Q_EMIT correctionAsked();
        return true;
    case Qt::Key_PageUp:
    case Qt::Key_Up:
        Q_EMIT steppedBack();
        return true;
    case Qt::Key_PageDown:
    case Qt::Key_Down:
        Q_EMIT steppedOn();
        return true;
    case Qt::Key_Escape:
        Q_EMIT cancelled();
        return true;
    default:
        return false;
    }
}

void ReadingField::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    const Scheme scheme = schemeFor(palette());
    QPainter painter(this);
    painter.setPen(QPen(hasFocus() ? scheme.accent : scheme.line, kBorder));
    const int inset = kBorder / 2;
    painter.drawRect(rect().adjusted(inset, inset, -inset, -inset));
}

void ReadingField::changeEvent(QEvent* event) {
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::FontChange && !m_adopting) {
        adoptFont();
    }
}

void ReadingField::adoptFont() {
    m_adopting = true;
    setFont(withDigitHeight(font(), generousPixelsOf(kDigitMillimetres, *this)));
    m_adopting = false;
    updateGeometry();
}

} // namespace coilbook
