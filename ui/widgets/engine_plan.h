#pragma once

#include "ui/drawing/scheme.h"
#include "ui/widgets/engine_plan_layout.h"

#include <QWidget>

#include <functional>
#include <optional>

namespace coilbook {

/// The recurring picture: an engine from above with a cell for each spring. It draws the block, the
/// banks' names and the arrow to the front, walks by arrow keys and mouse, and leaves what stands
/// in a cell to the place of the window that shows it.
class EnginePlan : public QWidget {
    Q_OBJECT
public:
    /// What a cell is drawn from.
    struct Cell {
        Place place;
        QRectF area; ///< inside the frame that the plan draws
        bool selected = false;
    };

    using CellPainter = std::function<void(QPainter&, const Cell&, const Scheme&)>;
    using FooterPainter = std::function<void(QPainter&, const QRectF&, const Scheme&)>;
    using CellText = std::function<QString(const Place&)>;

    explicit EnginePlan(QWidget* parent = nullptr);

    /// An engine without banks shows nothing.
    void setEngine(const EngineLayout& engine);
    void setCellPainter(CellPainter painter);
    /// Draws under each bank, `lines` of text high.
    void setFooter(double lines, FooterPainter painter);
    /// Says a cell in words: its tool tip, and what a screen reader tells of the selected one.
    void setCellText(CellText text);
    /// Cells grow no further; an empty size lets them fill the widget.
    void setLargestCell(const QSizeF& size);

    [[nodiscard]] std::optional<Place> selected() const { return m_selected; }

    /// Does not emit; a place that the engine lacks selects nothing.
    void setSelected(const std::optional<Place>& place);

    [[nodiscard]] const EnginePlanLayout& planLayout() const { return m_layout; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    /// The user chose a place by key or mouse.
    void selectedByUser(const coilbook::Place& place);
    /// Enter, or a double click.
    void activated(const coilbook::Place& place);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    bool event(QEvent* event) override;

private:
    void layOut();
    void select(const Place& place);
    void describeSelected();

    EngineLayout m_engine;
    EnginePlanLayout m_layout;
    QSizeF m_largestCell;
    CellPainter m_painter;
    FooterPainter m_footerPainter;
    double m_footerLines = 0.0;
    CellText m_text;
    std::optional<Place> m_selected;
};

} // namespace coilbook
