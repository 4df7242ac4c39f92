#include "ui/printing/paper_plan.h"

#include "ui/printing/printed_words.h"

#include <QPolygonF>
#include <QStringList>

#include <algorithm>

namespace coilbook {

namespace {

constexpr std::size_t kLongestSingleBank = 16;
constexpr std::size_t kMostBanks = 3;
constexpr double kBetweenCylinders = mm(1.4);
constexpr double kFrontWidth = mm(4.0);
constexpr double kFrontWordWidth = mm(12.0);

EnginePlanSpacing spacingFor(const EngineLayout& engine, double tallestCell) {
    EnginePlanSpacing spacing;
    spacing.headingHeight = kPlanHeading;
    spacing.frontWidth = kFrontWidth;
    spacing.valley = engine.banks.size() > 2 ? mm(4.0) : mm(8.0);
    spacing.betweenCylinders = kBetweenCylinders;
    spacing.withinCylinder = -kHairline; // neighbours share their line
    spacing.largestCell = QSizeF(mm(120.0), tallestCell);
    return spacing;
}

Bank joined(std::vector<Bank>::const_iterator first, std::vector<Bank>::const_iterator last) {
    QStringList names;
    Bank all;
    for (; first != last; ++first) {
        names << first->name;
        all.places.insert(all.places.end(), first->places.begin(), first->places.end());
    }
    all.name = names.join(QStringLiteral(", "));
    return all;
}

/// The same places in at most three columns that fit the sheet.
EngineLayout folded(const EngineLayout& engine) {
    EngineLayout paper = engine;
    if (engine.banks.size() > kMostBanks) {
        const auto half =
            engine.banks.begin() + static_cast<std::ptrdiff_t>((engine.banks.size() + 1) / 2);
        paper.banks = {joined(engine.banks.begin(), half), joined(half, engine.banks.end())};
    } else if (engine.banks.size() == 1 &&
               engine.banks.front().places.size() > kLongestSingleBank) {
        const Bank& bank = engine.banks.front();
        // Between two cylinders, so that no cylinder is torn apart.
        auto half = bank.places.begin() + static_cast<std::ptrdiff_t>(bank.places.size() / 2);
        while (half != bank.places.end() && std::prev(half)->cylinder == half->cylinder) {
            ++half;
        }
        paper.banks = {Bank{bank.name, {bank.places.begin(), half}},
                       Bank{QString(), {half, bank.places.end()}}};
    }
    return paper;
}

} // namespace

EnginePlanLayout layOutPaperPlan(const EngineLayout& engine, const QRectF& area,
                                 double tallestCell) {
    const EngineLayout paper = folded(engine);
    EnginePlanLayout plan = layOutEnginePlan(paper, area.size(), spacingFor(paper, tallestCell));
    for (auto& spot : plan.spots) {
        spot.area.translate(area.topLeft());
    }
    for (auto& bank : plan.banks) {
        bank.area.translate(area.topLeft());
    }
    for (auto& cylinder : plan.cylinders) {
        cylinder.area.translate(area.topLeft());
    }
    plan.front.translate(area.topLeft());
    return plan;
}

double paperPlanHeight(const EngineLayout& engine, double cellHeight) {
    double height = 0.0;
    for (const Bank& bank : folded(engine).banks) {
        double rows = 0.0;
        for (std::size_t i = 0; i < bank.places.size(); ++i) {
            const bool newCylinder =
                i > 0 && bank.places[i - 1].cylinder != bank.places[i].cylinder;
            rows += cellHeight + (newCylinder ? kBetweenCylinders : 0.0);
        }
        height = std::max(height, rows);
    }
    return kPlanHeading + height;
}

void drawPlanHeadings(PaperCanvas& canvas, const EnginePlanLayout& plan) {
    const double line = kPlanHeading / 2.0;
    for (const EnginePlanLayout::Heading& bank : plan.banks) {
        canvas.text(QRectF(bank.area.left(), bank.area.top(),
                           bank.area.width() - kFrontWidth - kFrontWordWidth, line),
                    bank.text, {9.0, QFont::Bold});
    }
    // The word stands before the arrow, where a bank's name leaves room.
    const QPointF tip(plan.front.center().x(), plan.front.top());
    QPainter& painter = canvas.painter();
    painter.setPen(Qt::NoPen);
    painter.setBrush(canvas.scheme().line);
    painter.drawPolygon(
        QPolygonF{tip, tip + QPointF(mm(1.8), mm(3.8)), tip + QPointF(-mm(1.8), mm(3.8))});
    painter.setBrush(Qt::NoBrush);
    canvas.text(QRectF(tip.x() - mm(2.4) - kFrontWordWidth, tip.y(), kFrontWordWidth, line),
                Printed::tr("front", "of the engine"),
                {kSmallPrint, QFont::Normal, Qt::AlignRight | Qt::AlignVCenter});
}

} // namespace coilbook
