#include "ui/widgets/engine_plan_layout.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilbook {

namespace {

double gapAfter(const Bank& bank, std::size_t index, const EnginePlanSpacing& spacing) {
    if (index + 1 >= bank.places.size()) {
        return 0.0;
    }
    return bank.places[index].cylinder == bank.places[index + 1].cylinder
               ? spacing.withinCylinder
               : spacing.betweenCylinders;
}

double gapsOf(const Bank& bank, const EnginePlanSpacing& spacing) {
    double sum = 0.0;
    for (std::size_t i = 0; i < bank.places.size(); ++i) {
        sum += gapAfter(bank, i, spacing);
    }
    return sum;
}

/// The size of every cell: the longest bank fills the height, the banks share the width.
QSizeF cellSize(const EngineLayout& engine, const QSizeF& size, const EnginePlanSpacing& spacing) {
    const auto banks = static_cast<double>(engine.banks.size());
    const double width = (size.width() - spacing.valley * (banks - 1.0)) / banks;
    double height = std::numeric_limits<double>::infinity();
    for (const Bank& bank : engine.banks) {
        if (!bank.places.empty()) {
            const double room = size.height() - spacing.headingHeight - spacing.footerHeight -
                                gapsOf(bank, spacing);
            height = std::min(height, room / static_cast<double>(bank.places.size()));
        }
    }
    QSizeF cell(std::max(0.0, width), std::isfinite(height) ? std::max(0.0, height) : 0.0);
    if (!spacing.largestCell.isEmpty()) {
        cell = cell.boundedTo(spacing.largestCell);
    }
    return cell;
}

void placeBank(EnginePlanLayout& plan, const Bank& bank, const QPointF& topLeft, const QSizeF& cell,
               const EnginePlanSpacing& spacing) {
    plan.banks.push_back({bank.name, QRectF(topLeft, QSizeF(cell.width(), spacing.headingHeight))});
    double top = topLeft.y() + spacing.headingHeight;
    for (std::size_t i = 0; i < bank.places.size(); ++i) {
        const Place& place = bank.places[i];
        const QRectF area(QPointF(topLeft.x(), top), cell);
        plan.spots.push_back({place, area});
        if (i > 0 && bank.places[i - 1].cylinder == place.cylinder) {
            plan.cylinders.back().area |= area;
        } else {
            plan.cylinders.push_back({place.cylinder, area});
        }
        top += cell.height() + gapAfter(bank, i, spacing);
    }
    plan.footers.emplace_back(QPointF(topLeft.x(), top),
                              QSizeF(cell.width(), spacing.footerHeight));
}

/// Between the two middle banks; with an odd number of banks beside the middle one's name.
QRectF frontOf(const std::vector<EnginePlanLayout::Heading>& banks, const QSizeF& size) {
    const QRectF middle = banks[banks.size() / 2].area;
    if (banks.size() % 2 == 1) {
        return QRectF(QPointF(middle.right() - size.width(), middle.top()), size);
    }
    const QRectF before = banks[banks.size() / 2 - 1].area;
    const double centre = (before.right() + middle.left()) / 2.0;
    return QRectF(QPointF(centre - size.width() / 2.0, middle.top()), size);
}

bool overlapAcross(const QRectF& a, const QRectF& b) {
    return a.left() < b.right() && b.left() < a.right();
}

} // namespace

QRectF EnginePlanLayout::areaOf(const Place& place) const {
    const auto found = std::find_if(spots.begin(), spots.end(),
                                    [&](const Spot& spot) { return spot.place == place; });
    return found == spots.end() ? QRectF() : found->area;
}

std::optional<Place> EnginePlanLayout::placeAt(const QPointF& point) const {
    const auto found = std::find_if(spots.begin(), spots.end(),
                                    [&](const Spot& spot) { return spot.area.contains(point); });
    return found == spots.end() ? std::nullopt : std::optional(found->place);
}

std::optional<Place> EnginePlanLayout::neighbour(const Place& from, PlanDirection direction) const {
    const QRectF here = areaOf(from);
    const bool along = direction == PlanDirection::Front || direction == PlanDirection::Rear;
    const double sign =
        direction == PlanDirection::Front || direction == PlanDirection::Left ? -1.0 : 1.0;
    std::optional<Place> best;
    std::pair<double, double> bestDistance;
    for (const Spot& spot : spots) {
        const QPointF step = spot.area.center() - here.center();
        const double ahead = sign * (along ? step.y() : step.x());
        if (ahead <= 0.0 || overlapAcross(here, spot.area) != along) {
            continue;
        }
        const std::pair distance(ahead, std::abs(along ? step.x() : step.y()));
        if (!best || distance < bestDistance) {
            best = spot.place;
            bestDistance = distance;
        }
    }
    return best;
}

EnginePlanLayout layOutEnginePlan(const EngineLayout& engine, const QSizeF& size,
                                  const EnginePlanSpacing& spacing) {
    EnginePlanLayout plan;
    if (engine.banks.empty()) {
        return plan;
    }
    const QSizeF cell = cellSize(engine, size, spacing);
    const auto banks = static_cast<double>(engine.banks.size());
    const double width = cell.width() * banks + spacing.valley * (banks - 1.0);
    double left = std::max(0.0, (size.width() - width) / 2.0);
    for (const Bank& bank : engine.banks) {
        placeBank(plan, bank, QPointF(left, 0.0), cell, spacing);
        left += cell.width() + spacing.valley;
    }
    plan.front = frontOf(plan.banks, QSizeF(spacing.frontWidth, spacing.headingHeight));
    return plan;
}

} // namespace coilbook
