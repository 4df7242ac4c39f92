#include "ui/widgets/engine_plan.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

namespace coilbook {

namespace {

constexpr double kFrame = 2.0; ///< of the selected cell

double frontWidth(const QFontMetricsF& metrics, const QString& word) {
    return metrics.ascent() * 1.4 + metrics.horizontalAdvance(word);
}

/// "Front" with a flat arrow head before it that points to the top.
void drawFront(QPainter& painter, const QRectF& area, const QString& word, const Scheme& scheme) {
    const QFontMetricsF metrics = painter.fontMetrics();
    const double head = metrics.ascent();
    const double left = area.left() + (area.width() - frontWidth(metrics, word)) / 2.0;
    const double top = area.center().y() - head * 0.5;
    painter.setPen(Qt::NoPen);
    painter.setBrush(scheme.text);
    painter.drawPolygon(QPolygonF({{left + head * 0.5, top},
                                   {left + head, top + head},
                                   {left + head * 0.5, top + head * 0.75},
                                   {left, top + head}}));
    painter.setPen(scheme.text);
    painter.drawText(area.adjusted(left + head * 1.4 - area.left(), 0.0, 0.0, 0.0),
                     Qt::AlignLeft | Qt::AlignVCenter, word);
}

std::optional<PlanDirection> directionOf(int key) {
    switch (key) {
    case Qt::Key_Up:
        return PlanDirection::Front;
    case Qt::Key_Down:
        return PlanDirection::Rear;
    case Qt::Key_Left:
        return PlanDirection::Left;
    case Qt::Key_Right:
        return PlanDirection::Right;
    default:
        return std::nullopt;
    }
}

} // namespace

EnginePlan::EnginePlan(QWidget* parent)
    : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Engine plan"));
}

void EnginePlan::setEngine(const EngineLayout& engine) {
    m_engine = engine;
    if (m_selected && !m_engine.has(*m_selected)) {
        m_selected.reset();
    }
    layOut();
}

void EnginePlan::setCellPainter(CellPainter painter) {
    m_painter = std::move(painter);
    update();
}

void EnginePlan::setFooter(double lines, FooterPainter painter) {
    m_footerLines = lines;
    m_footerPainter = std::move(painter);
    layOut();
}

void EnginePlan::setCellText(CellText text) {
    m_text = std::move(text);
    describeSelected();
}

void EnginePlan::setLargestCell(const QSizeF& size) {
    m_largestCell = size;
    layOut();
}

void EnginePlan::setSelected(const std::optional<Place>& place) {
    m_selected = place && m_engine.has(*place) ? place : std::nullopt;
    describeSelected();
    update();
}

QSize EnginePlan::sizeHint() const {
    return minimumSizeHint() * 2;
}

QSize EnginePlan::minimumSizeHint() const {
    const QFontMetrics metrics = fontMetrics();
    std::size_t longest = 0;
    for (const Bank& bank : m_engine.banks) {
        longest = std::max(longest, bank.places.size());
    }
    return {static_cast<int>(m_engine.banks.size()) * metrics.averageCharWidth() * 12,
            static_cast<int>(longest + 1) * metrics.height() * 2};
}

void EnginePlan::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Scheme scheme = schemeFor(palette());
    for (const EnginePlanLayout::CylinderFrame& frame : m_layout.cylinders) {
        painter.setPen(QPen(scheme.line, 1.0));
        painter.setBrush(scheme.panel);
        painter.drawRoundedRect(frame.area.adjusted(0.5, 0.5, -0.5, -0.5), 4.0, 4.0);
    }
    if (!m_layout.spots.empty()) {
        drawFront(painter, m_layout.front, tr("Front"), scheme);
    }
    painter.setPen(scheme.mutedText);
    for (const EnginePlanLayout::Heading& bank : m_layout.banks) {
        painter.drawText(bank.area, Qt::AlignHCenter | Qt::AlignVCenter, bank.text);
    }
    for (const QRectF& footer : m_layout.footers) {
        if (m_footerPainter && !footer.isEmpty()) {
            painter.save();
            m_footerPainter(painter, footer.adjusted(kFrame, 0.0, -kFrame, 0.0), scheme);
            painter.restore();
        }
    }
    for (const EnginePlanLayout::Spot& spot : m_layout.spots) {
        const bool selected = m_selected == spot.place;
        const QRectF inside = spot.area.adjusted(kFrame, kFrame, -kFrame, -kFrame);
        if (m_painter && !inside.isEmpty()) {
            painter.save();
            m_painter(painter, {spot.place, inside, selected}, scheme);
            painter.restore();
        }
        if (selected) {
            painter.setBrush(Qt::NoBrush);
            painter.setPen(QPen(scheme.accent, kFrame, hasFocus() ? Qt::SolidLine : Qt::DashLine));
            painter.drawRoundedRect(spot.area.adjusted(1.0, 1.0, -1.0, -1.0), 4.0, 4.0);
        }
    }
}

void EnginePlan::resizeEvent(QResizeEvent*) {
    layOut();
}

void EnginePlan::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) {
        layOut();
    }
    QWidget::changeEvent(event);
}

void EnginePlan::keyPressEvent(QKeyEvent* event) {
    if (m_layout.spots.empty()) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (const std::optional<PlanDirection> direction = directionOf(event->key())) {
        if (!m_selected) {
            select(m_layout.spots.front().place);
        } else if (const auto next = m_layout.neighbour(*m_selected, *direction)) {
            select(*next);
        }
        return;
    }
    if (event->key() == Qt::Key_Home) {
        select(m_layout.spots.front().place);
    } else if (event->key() == Qt::Key_End) {
        select(m_layout.spots.back().place);
    } else if (m_selected && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) {
        Q_EMIT activated(*m_selected);
    } else {
        QWidget::keyPressEvent(event);
    }
}

void EnginePlan::mousePressEvent(QMouseEvent* event) {
    const std::optional<Place> place = m_layout.placeAt(event->position());
    if (place && event->button() == Qt::LeftButton) {
        select(*place);
    }
}

void EnginePlan::mouseDoubleClickEvent(QMouseEvent* event) {
    const std::optional<Place> place = m_layout.placeAt(event->position());
    if (place && event->button() == Qt::LeftButton) {
        Q_EMIT activated(*place);
    }
}

bool EnginePlan::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && m_text) {
        const auto* help = static_cast<QHelpEvent*>(event);
        if (const auto place = m_layout.placeAt(help->pos())) {
            QToolTip::showText(help->globalPos(), m_text(*place), this,
                               m_layout.areaOf(*place).toAlignedRect());
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    return QWidget::event(event);
}

void EnginePlan::layOut() {
    const QFontMetricsF metrics(font());
    const double line = metrics.height();
    m_layout = layOutEnginePlan(m_engine, QSizeF(size()),
                                {.headingHeight = line * 1.4,
                                 .footerHeight = line * m_footerLines,
                                 .frontWidth = frontWidth(metrics, tr("Front")),
                                 .valley = line * 1.2,
                                 .betweenCylinders = line * 0.5,
                                 .withinCylinder = 2.0,
                                 .largestCell = m_largestCell});
    update();
}

void EnginePlan::select(const Place& place) {
    if (m_selected == place) {
        return;
    }
    setSelected(place);
    Q_EMIT selectedByUser(place);
}

void EnginePlan::describeSelected() {
    setAccessibleDescription(m_selected && m_text ? m_text(*m_selected) : QString());
}

} // namespace coilbook
