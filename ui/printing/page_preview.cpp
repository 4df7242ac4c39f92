#include "ui/printing/page_preview.h"

#include "ui/drawing/scheme.h"
#include "ui/printing/paper_canvas.h"

#include <QPainter>
#include <QPixmap>
#include <QWheelEvent>

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

constexpr double kZoomStep = 1.25;
constexpr double kLeastWidth = 200.0;
constexpr double kMostWidth = 3200.0;
constexpr int kEdge = 8; ///< of the ground around the sheet

} // namespace

/// The sheet itself with a little ground around it. The drawn page is kept, so scrolling is cheap.
class PagePreview::Sheet : public QWidget {
public:
    void set(Paper paper, PagePainting painting) {
        m_paper = paper;
        m_painting = std::move(painting);
        redraw();
    }

    void redraw() {
        m_drawn = {};
        update();
    }

    [[nodiscard]] QSizeF paper() const { return sheetSize(m_paper); }

    [[nodiscard]] QRect page() const {
        const QRect room = rect().adjusted(kEdge, kEdge, -kEdge, -kEdge);
        const QSize size = paper().scaled(room.size(), Qt::KeepAspectRatio).toSize();
        return QRect(room.center() - QPoint(size.width() / 2, size.height() / 2), size);
    }

protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        const QRect where = page();
        if (!m_painting || where.isEmpty()) {
            return;
        }
        const double ratio = devicePixelRatioF();
        const QSize dots = (QSizeF(where.size()) * ratio).toSize();
        if (m_drawn.size() != dots) {
            m_drawn = QPixmap(dots);
            m_drawn.setDevicePixelRatio(ratio);
            m_drawn.fill(Qt::white);
            QPainter onPage(&m_drawn);
            m_painting(onPage, QRectF(QPointF(), QSizeF(where.size())));
        }
        QPainter painter(this);
        painter.drawPixmap(where.topLeft(), m_drawn);
        painter.setPen(schemeFor(palette()).line);
        painter.drawRect(where.adjusted(-1, -1, 0, 0));
    }

private:
    Paper m_paper = Paper::A4;
    PagePainting m_painting;
    QPixmap m_drawn;
};

PagePreview::PagePreview(QWidget* parent)
    : QScrollArea(parent)
    , m_sheet(new Sheet) {
    setWidget(m_sheet);
    setAlignment(Qt::AlignCenter);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
}

void PagePreview::showPage(Paper paper, PagePainting painting, const QString& accessibleText) {
    m_sheet->set(paper, std::move(painting));
    setAccessibleName(accessibleText);
    arrange();
}

void PagePreview::zoomIn() {
    zoomBy(kZoomStep);
}

void PagePreview::zoomOut() {
    zoomBy(1.0 / kZoomStep);
}

void PagePreview::showWholePage() {
    m_width.reset();
    arrange();
}

double PagePreview::pageWidth() const {
    return m_sheet->page().width();
}

void PagePreview::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    arrange();
}

void PagePreview::wheelEvent(QWheelEvent* event) {
    if (!event->modifiers().testFlag(Qt::ControlModifier)) {
        QScrollArea::wheelEvent(event);
        return;
    }
    if (event->angleDelta().y() != 0) {
        zoomBy(event->angleDelta().y() > 0 ? kZoomStep : 1.0 / kZoomStep);
    }
    event->accept();
}

void PagePreview::zoomBy(double factor) {
    m_width = std::clamp(pageWidth() * factor, kLeastWidth, kMostWidth);
    arrange();
}

void PagePreview::arrange() {
    if (!m_width) {
        m_sheet->resize(maximumViewportSize());
    } else {
        const QSizeF paper = m_sheet->paper();
        const QSizeF page(*m_width, *m_width * paper.height() / paper.width());
        m_sheet->resize(page.toSize() + QSize(2 * kEdge, 2 * kEdge));
    }
    m_sheet->update();
}

} // namespace coilbook
