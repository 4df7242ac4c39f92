#include "ui/printing/spring_cell.h"

#include "ui/drawing/standing_mark.h"
#include "ui/printing/loss_trend.h"
#include "ui/printing/printed_words.h"

#include <QStringList>

#include <algorithm>

namespace coilbook {

namespace {

constexpr double kPlace = 13.0; ///< points
constexpr double kNumber = 10.0;
constexpr double kStanding = 9.0;
constexpr double kPad = mm(0.8);
constexpr double kPlaceWidth = mm(10.8);
constexpr double kMarkWidth = mm(3.4);
constexpr double kBaselineWidth = mm(13.5);
constexpr double kLatestWidth = mm(12.0);
constexpr double kLossWidth = mm(10.5);
constexpr double kTrendWidth = mm(26.0);
constexpr double kWidestWithoutTrend = mm(78.0);
constexpr double kOneLineStandingWidth = mm(31.0);
constexpr double kOneLineWidth = kPlaceWidth + kMarkWidth + kBaselineWidth + kLatestWidth +
                                 kLossWidth + kOneLineStandingWidth + 5.0 * kPad;
constexpr Qt::Alignment kRight = Qt::AlignRight | Qt::AlignVCenter;

} // namespace

SpringCellLayout layOutSpringCell(const QSizeF& cell, bool hasNotes) {
    double numbers = PaperCanvas::lineHeight(kNumber);
    double words = PaperCanvas::lineHeight(kStanding);
    const double small = PaperCanvas::lineHeight(kSmallPrint);
    // A cell too narrow for one line has two, set close where it is low as well.
    const bool twoLines = cell.height() >= numbers + words || cell.width() < kOneLineWidth;
    if (twoLines && cell.height() < numbers + words) {
        numbers *= cell.height() / (numbers + words);
        words = cell.height() - numbers;
    }
    const bool threeLines = hasNotes && cell.height() >= numbers + words + small;
    const bool trend = twoLines && cell.width() > kWidestWithoutTrend;

    SpringCellLayout layout;
    layout.place = QRectF(0.0, 0.0, kPlaceWidth, cell.height());
    const double markHeight = std::min(2.4 * kMarkWidth, cell.height() - 2.0 * kPad);
    layout.mark = QRectF(kPlaceWidth, (cell.height() - markHeight) / 2.0,
                         std::min(kMarkWidth, markHeight / 1.6), markHeight);
    double right = cell.width() - kPad;
    if (trend) {
        layout.trend = QRectF(right - kTrendWidth, kPad, kTrendWidth, cell.height() - 2.0 * kPad);
        right = layout.trend.left() - 2.0 * kPad;
    } else if (!twoLines) {
        layout.standing =
            QRectF(right - kOneLineStandingWidth, 0.0, kOneLineStandingWidth, cell.height());
        right = layout.standing.left() - 2.0 * kPad;
    }
    const double block = twoLines ? numbers + words + (threeLines ? small : 0.0) : cell.height();
    const double top = (cell.height() - block) / 2.0;
    const double height = twoLines ? numbers : cell.height();
    const double left = kPlaceWidth + kMarkWidth + 2.0 * kPad;
    layout.loss = QRectF(right - kLossWidth, top, kLossWidth, height);
    layout.latest = QRectF(layout.loss.left() - kLatestWidth, top, kLatestWidth, height);
    layout.baseline = QRectF(layout.latest.left() - kBaselineWidth, top, kBaselineWidth, height);
    layout.label = QRectF(left, top, std::max(0.0, layout.baseline.left() - left), height);
    if (twoLines) {
        layout.standing = QRectF(left, top + numbers, right - left, words);
    }
    if (threeLines) {
        layout.note = QRectF(left, top + numbers + words, right - left, small);
    }
    return layout;
}

QString springNotes(const SheetSpring& spring) {
    QStringList notes;
    if (!spring.latestCorrected.isEmpty()) {
        notes << Printed::tr("corrected %1", "a force").arg(spring.latestCorrected);
    }
    if (spring.pastBy == PastBy::Estimate) {
        notes << Printed::tr("by estimate: %1").arg(spring.estimatedLoss);
    }
    if (spring.pastBy == PastBy::Measured) {
        notes << Printed::tr("test again before swapping");
    }
    if (spring.offTrend) {
        notes << Printed::tr("off its trend");
    }
    if (spring.provisional) {
        notes << Printed::tr("provisional");
    }
    if (!spring.latestOn.isEmpty()) {
        notes << Printed::tr("read %1", "a date").arg(spring.latestOn);
    }
    return notes.join(QStringLiteral("; "));
}

void drawSpringCell(PaperCanvas& canvas, const QRectF& area, const SheetSpring& spring,
                    const LossChartRange& range) {
    const QString notes = springNotes(spring);
    const SpringCellLayout layout = layOutSpringCell(area.size(), !notes.isEmpty());
    const auto at = [&](const QRectF& part) {
        return part.translated(area.topLeft());
    };
    const bool past = spring.standing == Standing::PastLimit;

    const double placeSize =
        area.height() < PaperCanvas::lineHeight(kPlace) * 1.3 ? kNumber : kPlace;
    canvas.text(at(layout.place), placeText(spring.place),
                {placeSize, QFont::Bold, Qt::AlignCenter});
    if (spring.label.isEmpty()) {
        canvas.text(at(layout.label.united(layout.loss)), Printed::tr("no spring noted"),
                    {kStanding});
        canvas.frame(area);
        return;
    }
    canvas.text(at(layout.label), spring.label, {kStanding});
    canvas.number(at(layout.baseline), spring.baseline, {kNumber, QFont::Normal, kRight});
    canvas.number(at(layout.latest), spring.latest, {kNumber, QFont::Normal, kRight});
    canvas.number(at(layout.loss), spring.loss, {kNumber, QFont::Bold, kRight});

    const bool stressed = past || spring.standing == Standing::Due;
    QString words = spring.standingWords;
    if (layout.note.isNull() && !notes.isEmpty()) {
        words += QStringLiteral("; ") + notes;
    }
    canvas.text(at(layout.standing), words, {kStanding, stressed ? QFont::Bold : QFont::Normal});
    if (!layout.note.isNull()) {
        canvas.text(at(layout.note), notes);
    }
    drawStandingMark(canvas.painter(), at(layout.mark), {spring.standing, spring.usedOfLimit},
                     canvas.scheme());
    if (!layout.trend.isNull()) {
        drawLossTrend(canvas, at(layout.trend), spring.chart, range);
    }
    canvas.frame(area, past ? mm(0.7) : kHairline);
}

void drawSpringCaptions(PaperCanvas& canvas, const QRectF& firstCell) {
    const SpringCellLayout layout = layOutSpringCell(firstCell.size(), false);
    const double height = PaperCanvas::lineHeight(kSmallPrint);
    const auto caption = [&](const QRectF& column, const QString& text, Qt::Alignment alignment) {
        canvas.text(QRectF(firstCell.left() + column.left(), firstCell.top() - height,
                           column.width(), height),
                    text, {kSmallPrint, QFont::Normal, alignment});
    };
    caption(layout.label, Printed::tr("Spring"), Qt::AlignLeft);
    caption(layout.baseline, Printed::tr("Baseline"), kRight);
    caption(layout.latest, Printed::tr("Latest"), kRight);
    caption(layout.loss, Printed::tr("Loss"), kRight);
    if (!layout.trend.isNull()) {
        caption(layout.trend, Printed::tr("Loss over races"), Qt::AlignLeft);
    }
}

} // namespace coilbook
