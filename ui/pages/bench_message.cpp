#include "ui/pages/bench_message.h"

#include "ui/drawing/scheme.h"

#include <QEvent>

namespace coilbook {

namespace {

constexpr int kLines = 3;

QString wordOf(BenchMessage::Kind kind) {
    switch (kind) {
    case BenchMessage::Kind::Hint:
        return {};
    case BenchMessage::Kind::Saving:
        return BenchMessage::tr("Saving …");
    case BenchMessage::Kind::Saved:
        return BenchMessage::tr("Saved.", "a reading is safe on the disk");
    case BenchMessage::Kind::Waiting:
        return BenchMessage::tr("Waiting.", "a reading is kept, but not in the logbook yet");
    case BenchMessage::Kind::NotSaved:
        return BenchMessage::tr("NOT saved.");
    case BenchMessage::Kind::Refused:
        return BenchMessage::tr("Not entered.");
    case BenchMessage::Kind::Asks:
        return BenchMessage::tr("Are you sure?");
    case BenchMessage::Kind::Warns:
        return BenchMessage::tr("Stop a moment.");
    }
    Q_UNREACHABLE();
}

QColor colourOf(BenchMessage::Kind kind, const Scheme& scheme) {
    switch (kind) {
    case BenchMessage::Kind::Saved:
        return scheme.sound;
    case BenchMessage::Kind::NotSaved:
    case BenchMessage::Kind::Refused:
        return scheme.pastLimit;
    case BenchMessage::Kind::Waiting:
    case BenchMessage::Kind::Asks:
    case BenchMessage::Kind::Warns:
        return scheme.due;
    case BenchMessage::Kind::Hint:
    case BenchMessage::Kind::Saving:
        break;
    }
    return scheme.mutedText;
}

} // namespace

BenchMessage::BenchMessage(QWidget* parent)
    : QLabel(parent) {
    setWordWrap(true);
    setTextFormat(Qt::RichText);
    setAlignment(Qt::AlignLeft | Qt::AlignTop);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void BenchMessage::say(Kind kind, const QString& sentence) {
    m_kind = kind;
    m_sentence = sentence;
    compose();
}

QSize BenchMessage::sizeHint() const {
    return {fontMetrics().averageCharWidth() * 50, fontMetrics().lineSpacing() * kLines};
}

QSize BenchMessage::minimumSizeHint() const {
    return {fontMetrics().averageCharWidth() * 30, sizeHint().height()};
}

void BenchMessage::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        compose();
    }
}

void BenchMessage::compose() {
    const QColor colour = colourOf(m_kind, schemeFor(palette()));
    const QString word = wordOf(m_kind);
    QString html;
    if (!word.isEmpty()) {
        html = QStringLiteral("<b style=\"color:%1\">%2</b> ").arg(colour.name(), word);
    }
    setText(html + m_sentence.toHtmlEscaped());
    setAccessibleName(word + QLatin1Char(' ') + m_sentence);
}

} // namespace coilbook
