#pragma once

#include "ui/drawing/scheme.h"
#include "ui/preferences.h"

#include <QFont>
#include <QPainter>
#include <QPen>
#include <QRectF>
#include <QSizeF>
#include <QString>

namespace coilbook {

/// Lengths on paper are counted in hundredths of a millimetre. The painter is scaled to them once,
/// so one layout serves printer, PDF and preview, each at its own resolution.
[[nodiscard]] constexpr double mm(double millimetres) {
    return 100.0 * millimetres;
}

/// 1 pt = 1/72 in = 25.4/72 mm.
[[nodiscard]] constexpr double points(double count) {
    return mm(count * 25.4 / 72.0);
}

/// The whole sheet: ISO 216 A4, 210 × 297 mm; ANSI Letter, 8.5 × 11 in.
[[nodiscard]] QSizeF sheetSize(Paper paper);

constexpr double kPageMargin = mm(10.0);
constexpr double kHairline = mm(0.25); ///< thinner lines do not survive a fax
constexpr double kSmallPrint = 8.0;    ///< points; nothing is smaller

/// How one piece of text is set.
struct TextStyle {
    double size = kSmallPrint; ///< points
    QFont::Weight weight = QFont::Normal;
    Qt::Alignment alignment = Qt::AlignLeft | Qt::AlignVCenter;
    bool struckOut = false;
};

/// Draws in black and grey on one sheet of paper, in hundredths of a millimetre from its top left
/// corner. Text never leaves its rectangle: what is too long ends in an ellipsis.
class PaperCanvas {
public:
    /// Scales `painter`, whose device shows the whole sheet on `device` (device units; a printer or
    /// PDF writer in full-page mode, or the area of a preview). The painter is left as it was when
    /// the canvas goes.
    PaperCanvas(QPainter& painter, const QRectF& device, Paper paper);
    ~PaperCanvas();
    PaperCanvas(const PaperCanvas&) = delete;
    PaperCanvas& operator=(const PaperCanvas&) = delete;

    [[nodiscard]] QPainter& painter() { return m_painter; }

    [[nodiscard]] const Scheme& scheme() const { return m_scheme; }

    /// Inside the margins.
    [[nodiscard]] QRectF area() const { return m_area; }

    [[nodiscard]] static QFont font(const TextStyle& style);
    [[nodiscard]] static double lineHeight(double size);
    [[nodiscard]] static double textWidth(const QString& text, const TextStyle& style);

    /// One line.
    void text(const QRectF& where, const QString& text, const TextStyle& style = {});

    /// One line that is set smaller, down to the small print, before anything of it is left out:
    /// a number that lacks a digit is a wrong number.
    void number(const QRectF& where, const QString& text, TextStyle style);

    /// Wrapped text from the top of `where`, as many whole lines as it has room for, the last one
    /// elided if there is more. The height that it took.
    double paragraph(const QRectF& where, const QString& text, const TextStyle& style = {});

    void line(const QPointF& from, const QPointF& to, double width = kHairline);
    /// Drawn inside `rect`.
    void frame(const QRectF& rect, double width = kHairline);

private:
    QPainter& m_painter;
    Scheme m_scheme;
    QRectF m_area;
};

/// Height that `paragraph` would take without a limit.
[[nodiscard]] double paragraphHeight(const QString& text, double width,
                                     const TextStyle& style = {});

} // namespace coilbook
