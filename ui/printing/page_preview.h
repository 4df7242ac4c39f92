#pragma once

#include "ui/preferences.h"
#include "ui/printing/sheet_pdf.h"

#include <QScrollArea>

#include <optional>

namespace coilbook {

/// One sheet of paper on the screen, drawn by the very painting that prints it. Shows the whole
/// page until it is zoomed; then it scrolls.
class PagePreview : public QScrollArea {
    Q_OBJECT
public:
    explicit PagePreview(QWidget* parent = nullptr);

    /// `accessibleText` tells what the page is to whoever cannot see it.
    void showPage(Paper paper, PagePainting painting, const QString& accessibleText);

    void zoomIn();
    void zoomOut();
    void showWholePage();

    /// Width of the sheet on screen, in device-independent dots.
    [[nodiscard]] double pageWidth() const;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    class Sheet;

    void zoomBy(double factor);
    void arrange();

    Sheet* m_sheet;
    std::optional<double> m_width; ///< of the sheet; empty: as large as it fits whole
};

} // namespace coilbook
