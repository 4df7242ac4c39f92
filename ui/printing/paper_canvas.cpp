#include "ui/printing/paper_canvas.h"

#include "ui/drawing/fonts.h"

#include <QFontMetricsF>
#include <QTextLayout>

#include <cmath>

namespace coilbook {

namespace {

/// Breaks `text` into lines of `width` and hands each to `take(start, length)` until it says false.
template <class Take>
void breakLines(const QString& text, double width, const TextStyle& style, Take take) {
    QTextLayout layout(text, PaperCanvas::font(style));
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
        if (!take(line.textStart(), line.textLength())) {
            break;
        }
    }
    layout.endLayout();
}

} // namespace

QSizeF sheetSize(Paper paper) {
    return paper == Paper::Letter ? QSizeF(mm(215.9), mm(279.4)) : QSizeF(mm(210.0), mm(297.0));
}

PaperCanvas::PaperCanvas(QPainter& painter, const QRectF& device, Paper paper)
    : m_painter(painter)
    , m_scheme(paperScheme()) {
    const QSizeF sheet = sheetSize(paper);
    m_area =
        QRectF(QPointF(), sheet).adjusted(kPageMargin, kPageMargin, -kPageMargin, -kPageMargin);
    m_painter.save();
    m_painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    m_painter.translate(device.topLeft());
    m_painter.scale(device.width() / sheet.width(), device.height() / sheet.height());
}

PaperCanvas::~PaperCanvas() {
    m_painter.restore();
}

QFont PaperCanvas::font(const TextStyle& style) {
    QFont font = programFont(style.size, style.weight);
    // The painter is scaled, so a "pixel" is a hundredth of a millimetre here.
    font.setPixelSize(static_cast<int>(std::lround(points(style.size))));
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStrikeOut(style.struckOut);
    return font;
}

double PaperCanvas::lineHeight(double size) {
    return points(size) * 1.25;
}

double PaperCanvas::textWidth(const QString& text, const TextStyle& style) {
    return QFontMetricsF(font(style)).horizontalAdvance(text);
}

void PaperCanvas::text(const QRectF& where, const QString& text, const TextStyle& style) {
    Q_ASSERT(style.size >= kSmallPrint);
    const QFont used = font(style);
    const QString fitting =
        QFontMetricsF(used).elidedText(text.simplified(), Qt::ElideRight, where.width());
    m_painter.setFont(used);
    m_painter.setPen(m_scheme.text);
    m_painter.drawText(where, static_cast<int>(style.alignment) | Qt::TextSingleLine, fitting);
}

void PaperCanvas::number(const QRectF& where, const QString& text, TextStyle style) {
    constexpr double kStep = 0.5; // points
    while (style.size - kStep >= kSmallPrint && textWidth(text, style) > where.width()) {
        style.size -= kStep;
    }
    this->text(where, text, style);
}

double PaperCanvas::paragraph(const QRectF& where, const QString& text, const TextStyle& style) {
    const double height = lineHeight(style.size);
    const int room = static_cast<int>(where.height() / height + 1e-6);
    int lines = 0;
    breakLines(text, where.width(), style, [&](int start, int length) {
        if (lines >= room) {
            return false;
        }
        const bool last = lines + 1 == room;
        this->text(QRectF(where.left(), where.top() + lines * height, where.width(), height),
                   last ? text.mid(start) : text.mid(start, length), style);
        ++lines;
        return true;
    });
    return lines * height;
}

void PaperCanvas::line(const QPointF& from, const QPointF& to, double width) {
    m_painter.setPen(QPen(m_scheme.line, width, Qt::SolidLine, Qt::FlatCap));
    m_painter.drawLine(from, to);
}

void PaperCanvas::frame(const QRectF& rect, double width) {
    m_painter.setPen(QPen(m_scheme.line, width, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawRect(rect.adjusted(width / 2, width / 2, -width / 2, -width / 2));
}

double paragraphHeight(const QString& text, double width, const TextStyle& style) {
    int lines = 0;
    breakLines(text, width, style, [&](int, int) {
        ++lines;
        return true;
    });
    return lines * PaperCanvas::lineHeight(style.size);
}

} // namespace coilbook
