#include "ui/pages/bench_round_plan.h"

#include "core/wording/wording.h"
#include "ui/drawing/standing_mark.h"
#include "ui/widgets/physical_size.h"

#include <QPainter>

#include <algorithm>

namespace coilbook {

namespace {

/// Read from further away than other plans.
constexpr double kLarger = 1.25;

} // namespace

BenchRoundPlan::BenchRoundPlan(QWidget* parent)
    : EnginePlan(parent) {
    setFocusPolicy(Qt::NoFocus);
    setCellPainter([this](QPainter& painter, const EnginePlan::Cell& cell, const Scheme& scheme) {
        paintCell(painter, cell, scheme);
    });
    setCellText([this](const Place& place) {
        const auto found = m_cells.find(place);
        const QString reading = found == m_cells.end() ? QString() : found->second.reading;
        return reading.isEmpty() ? tr("%1: still to do").arg(wording::place(place))
                                 : tr("%1: %2").arg(wording::place(place), reading);
    });
}

void BenchRoundPlan::showRound(const Round& round, const EngineLayout& layout, Force limit,
                               const Quantities& quantities) {
    m_cells.clear();
    for (const RoundStop& stop : round.stops()) {
        Cell& cell = m_cells[stop.place];
        if (const std::optional<RoundVerdict> verdict = verdictOf(stop, limit)) {
            cell = {quantities.force(verdict->mean), verdict->standing, verdict->used};
        }
    }
    setEngine(layout);
    update();
}

void BenchRoundPlan::paintCell(QPainter& painter, const EnginePlan::Cell& cell,
                               const Scheme& scheme) const {
    const auto found = m_cells.find(cell.place);
    const bool inRound = found != m_cells.end();
    const bool done = inRound && !found->second.reading.isEmpty();
    QRectF area = cell.area.adjusted(6.0, 2.0, -6.0, -2.0);
    if (cell.selected) {
        // Out to the dashed frame that the plan draws while the focus is elsewhere.
        painter.fillRect(cell.area.adjusted(-2.0, -2.0, 2.0, 2.0), scheme.accent);
    }
    const QColor ink = cell.selected ? scheme.panel : done ? scheme.text : scheme.mutedText;
    if (done) {
        const double tall = std::min(area.height() - 4.0, painter.fontMetrics().height() * 1.3);
        const QRectF mark(area.right() - tall / 2.0, area.center().y() - tall / 2.0, tall / 2.0,
                          tall);
        if (cell.selected) {
            painter.fillRect(mark.adjusted(-2.0, -2.0, 2.0, 2.0), scheme.panel);
        }
        const MeasuredStanding standing = found->second.standing;
        drawStandingMark(painter, mark,
                         {standing == MeasuredStanding::PastLimit     ? Standing::PastLimit
                          : standing == MeasuredStanding::WithinLimit ? Standing::Sound
                                                                      : Standing::NoTrend,
                          found->second.used},
                         scheme);
        area.setRight(mark.left() - 6.0);
    }
    painter.setPen(ink);
    QFont bold = scaled(painter.font(), kLarger);
    bold.setBold(true);
    painter.setFont(bold);
    painter.drawText(area, Qt::AlignLeft | Qt::AlignVCenter, placeText(cell.place));
    bold.setBold(done);
    painter.setFont(bold);
    const QString state = done            ? found->second.reading
                          : cell.selected ? tr("now")
                          : inRound       ? tr("to do")
                                          : QString();
    painter.drawText(area, Qt::AlignRight | Qt::AlignVCenter, state);
}

} // namespace coilbook
