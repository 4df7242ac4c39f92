#include "ui/printing/sheet_printer.h"

#include "ui/printing/paper_canvas.h"

#include <QPageSize>
#include <QPainter>
#include <QPrinter>

#include <algorithm>

namespace coilbook {

void preparePrinter(QPrinter& printer, Paper paper, const QString& title) {
    printer.setDocName(title);
    printer.setCreator(QStringLiteral("Coilbook"));
    printer.setFullPage(true); // the margins are ours
    printer.setPageSize(QPageSize(paper == Paper::Letter ? QPageSize::Letter : QPageSize::A4));
    printer.setPageOrientation(QPageLayout::Portrait);
}

bool printPage(QPrinter& printer, Paper paper, const PagePainting& painting) {
    QPainter painter;
    if (!painter.begin(&printer)) {
        return false;
    }
    const QSizeF room = printer.paperRect(QPrinter::DevicePixel).size();
    const QSizeF whole = sheetSize(paper) / mm(25.4) * printer.resolution();
    // Rounding of the paper's size to dots is no reason to shrink a page.
    constexpr double kTolerance = 0.995;
    const double fit = std::min(room.width() / whole.width(), room.height() / whole.height());
    const QSizeF size = whole * (fit < kTolerance ? fit : 1.0);
    painting(painter, QRectF(QPointF(), size));
    return painter.end();
}

} // namespace coilbook
