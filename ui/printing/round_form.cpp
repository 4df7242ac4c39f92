#include "ui/printing/round_form.h"

#include "ui/printing/paper_plan.h"
#include "ui/printing/printed_words.h"
#include "ui/printing/sheet_blocks.h"

#include <algorithm>
#include <array>

namespace coilbook {

namespace {

constexpr double kGap = mm(2.2);
constexpr double kTallestCell = mm(20.0);
constexpr double kPlaceWidth = mm(10.5);
constexpr double kPad = mm(0.8);
constexpr std::size_t kHits = 3; ///< as many as fit a thumb-sized box each

/// Parts of a cell from left to right, relative to its left edge.
struct FormColumns {
    double known = 0.0; ///< spring and latest reading
    double knownWidth = 0.0;
    std::array<double, kHits> hits{};
    double hitWidth = 0.0;
    double note = 0.0;
    double noteWidth = 0.0;
};

FormColumns columnsOf(double width) {
    FormColumns columns;
    const double rest = width - kPlaceWidth;
    columns.known = kPlaceWidth;
    columns.knownWidth = rest * 0.18;
    columns.hitWidth = rest * 0.19;
    double left = columns.known + columns.knownWidth;
    for (double& hit : columns.hits) {
        hit = left;
        left += columns.hitWidth;
    }
    columns.note = left;
    columns.noteWidth = width - left;
    return columns;
}

void drawCell(PaperCanvas& canvas, const QRectF& area, const RoundFormPlace& entry) {
    const FormColumns columns = columnsOf(area.width());
    canvas.text(QRectF(area.topLeft(), QSizeF(kPlaceWidth, area.height())), placeText(entry.place),
                {13.0, QFont::Bold, Qt::AlignCenter});
    const double line = PaperCanvas::lineHeight(kSmallPrint);
    const QRectF known(area.left() + columns.known, area.top(), columns.knownWidth - kPad,
                       area.height());
    if (area.height() < 2.0 * line) {
        canvas.text(known, entry.label + QLatin1Char(' ') + entry.latest);
    } else {
        const QRectF first(known.left(), known.center().y() - line, known.width(), line);
        canvas.text(first, entry.label);
        canvas.text(first.translated(0.0, line), entry.latest);
    }
    for (const double hit : columns.hits) {
        canvas.line({area.left() + hit, area.top()}, {area.left() + hit, area.bottom()});
    }
    canvas.line({area.left() + columns.note, area.top()},
                {area.left() + columns.note, area.bottom()});
    canvas.frame(area);
}

void drawCaptions(PaperCanvas& canvas, const QRectF& firstCell) {
    const FormColumns columns = columnsOf(firstCell.width());
    const double height = PaperCanvas::lineHeight(kSmallPrint);
    const auto caption = [&](double left, double width, const QString& text) {
        canvas.text(QRectF(firstCell.left() + left, firstCell.top() - height, width - kPad, height),
                    text);
    };
    caption(columns.known, columns.knownWidth, Printed::tr("Spring"));
    for (std::size_t i = 0; i < kHits; ++i) {
        caption(columns.hits.at(i) + kPad, columns.hitWidth, Printed::tr("Hit %1").arg(i + 1));
    }
    caption(columns.note + kPad, columns.noteWidth, Printed::tr("Note"));
}

double drawPlan(PaperCanvas& canvas, const QRectF& area, const RoundFormContent& content) {
    const EnginePlanLayout plan = layOutPaperPlan(content.layout, area, kTallestCell);
    drawPlanHeadings(canvas, plan);
    double previousLeft = -1.0;
    double bottom = area.top();
    for (const EnginePlanLayout::Spot& spot : plan.spots) {
        if (spot.area.left() > previousLeft) {
            drawCaptions(canvas, spot.area);
            previousLeft = spot.area.left();
        }
        const auto entry =
            std::find_if(content.places.begin(), content.places.end(),
                         [&](const RoundFormPlace& known) { return known.place == spot.place; });
        if (entry != content.places.end()) {
            drawCell(canvas, spot.area, *entry);
        }
        bottom = std::max(bottom, spot.area.bottom());
    }
    return bottom;
}

} // namespace

void paintRoundForm(QPainter& painter, const QRectF& device, Paper paper,
                    const RoundFormContent& content) {
    PaperCanvas canvas(painter, device, paper);
    QRectF free = canvas.area();
    const auto takeTop = [&](double height) {
        free.setTop(free.top() + height + kGap);
    };
    const auto takeBottom = [&](double height) {
        const QRectF taken(free.left(), free.bottom() - height, free.width(), height);
        free.setBottom(taken.top() - kGap);
        return taken;
    };
    takeTop(drawTitle(canvas, free, Printed::tr("Round form"),
                      Printed::tr("Engine: %1").arg(content.engine)));
    takeTop(drawFacts(canvas, free,
                      {{Printed::tr("Seal or serial number"), content.serial},
                       {Printed::tr("Date"), {}},
                       {Printed::tr("Races run (so far %1)").arg(content.racesRun), {}},
                       {Printed::tr("Tested by"), {}},
                       {Printed::tr("Tester"), {}},
                       {Printed::tr("Range of the tester"), {}},
                       {Printed::tr("Engine temperature"), {}},
                       {Printed::tr("Unit of the readings"), {}}}));
    drawFooter(canvas, takeBottom(footerHeight()), content.printedAt);
    drawSignatures(
        canvas, takeBottom(signaturesHeight()),
        {Printed::tr("Tested by, date"), Printed::tr("Entered in the logbook by, date")});
    drawCautions(canvas, takeBottom(cautionsHeight(content.cautions, free.width())),
                 content.cautions);
    const double legend = PaperCanvas::lineHeight(kSmallPrint);
    const double bottom =
        drawPlan(canvas, free.adjusted(0.0, 0.0, 0.0, -legend - mm(0.8)), content);
    canvas.text(
        QRectF(free.left(), bottom + mm(0.8), free.width(), legend),
        Printed::tr(
            "Beside each place its spring and the latest reading in %1. Write every digit that the "
            "tester shows; strike a slip through, so that it can still be read.")
            .arg(content.unit));
}

} // namespace coilbook
