#include "ui/printing/sheet_blocks.h"

#include "ui/printing/printed_words.h"

#include <algorithm>
#include <cstddef>

namespace coilbook {

namespace {

constexpr std::size_t kFactColumns = 4;
constexpr double kFactValue = 10.0;    ///< points
constexpr double kPenHeight = mm(6.5); ///< to write in
constexpr double kColumnGap = mm(4.0);
constexpr double kTitleSize = 15.0; ///< points
constexpr double kCautionGap = mm(0.6);

const TextStyle kCaption{kSmallPrint, QFont::Normal, Qt::AlignLeft | Qt::AlignVCenter, false};

double columnWidth(double width, double columns) {
    return (width - kColumnGap * (columns - 1.0)) / columns;
}

/// Cautions run in two columns; how many of them stand in the first so that both end level.
struct CautionColumns {
    qsizetype inFirst = 0;
    double height = 0.0;
};

CautionColumns balanced(const QStringList& cautions, double width) {
    std::vector<double> heights;
    for (const QString& caution : cautions) {
        heights.push_back(paragraphHeight(caution, width, kCaption) + kCautionGap);
    }
    CautionColumns best{cautions.size(), 0.0};
    for (std::size_t split = 0; split <= heights.size(); ++split) {
        double first = 0.0;
        double second = 0.0;
        for (std::size_t i = 0; i < heights.size(); ++i) {
            (i < split ? first : second) += heights[i];
        }
        const double height = std::max(first, second);
        if (split == 0 || height < best.height) {
            best = {static_cast<qsizetype>(split), height};
        }
    }
    return best;
}

} // namespace

double drawTitle(PaperCanvas& canvas, const QRectF& area, const QString& title,
                 const QString& engine) {
    const double height = PaperCanvas::lineHeight(kTitleSize);
    const TextStyle left{kTitleSize, QFont::Bold};
    const TextStyle right{kTitleSize, QFont::Bold, Qt::AlignRight | Qt::AlignVCenter};
    const double titleWidth = PaperCanvas::textWidth(title, left) + kColumnGap;
    canvas.text(QRectF(area.left(), area.top(), titleWidth, height), title, left);
    canvas.text(QRectF(area.left() + titleWidth, area.top(), area.width() - titleWidth, height),
                engine, right);
    const double rule = area.top() + height + mm(0.6);
    canvas.line({area.left(), rule}, {area.right(), rule}, mm(0.5));
    return height + mm(1.6);
}

double drawFacts(PaperCanvas& canvas, const QRectF& area, const std::vector<HeadFact>& facts) {
    const double caption = PaperCanvas::lineHeight(kSmallPrint);
    const bool byPen = std::any_of(facts.begin(), facts.end(),
                                   [](const HeadFact& fact) { return fact.value.isEmpty(); });
    const double value = byPen ? kPenHeight : PaperCanvas::lineHeight(kFactValue);
    const double row = caption + value + mm(1.2);
    const double width = columnWidth(area.width(), kFactColumns);
    for (std::size_t i = 0; i < facts.size(); ++i) {
        const auto column = i % kFactColumns;
        const auto line = i / kFactColumns;
        const double left = area.left() + static_cast<double>(column) * (width + kColumnGap);
        const double top = area.top() + static_cast<double>(line) * row;
        canvas.text(QRectF(left, top, width, caption), facts[i].caption, kCaption);
        const QRectF where(left, top + caption, width, value);
        if (facts[i].value.isEmpty()) {
            canvas.line(where.bottomLeft(), where.bottomRight());
        } else {
            canvas.text(where, facts[i].value, {kFactValue, QFont::Bold});
        }
    }
    const std::size_t rows = (facts.size() + kFactColumns - 1) / kFactColumns;
    return static_cast<double>(rows) * row;
}

double cautionsHeight(const QStringList& cautions, double width) {
    return balanced(cautions, columnWidth(width, 2.0)).height + mm(1.0);
}

void drawCautions(PaperCanvas& canvas, const QRectF& area, const QStringList& cautions) {
    const double width = columnWidth(area.width(), 2.0);
    const qsizetype inFirst = balanced(cautions, width).inFirst;
    canvas.line(area.topLeft(), area.topRight());
    double top = area.top() + mm(1.0);
    for (qsizetype i = 0; i < cautions.size(); ++i) {
        if (i == inFirst) {
            top = area.top() + mm(1.0);
        }
        const double left = area.left() + (i < inFirst ? 0.0 : width + kColumnGap);
        top +=
            canvas.paragraph(QRectF(left, top, width, area.bottom() - top), cautions[i], kCaption) +
            kCautionGap;
    }
}

double signaturesHeight() {
    return mm(9.0) + PaperCanvas::lineHeight(kSmallPrint);
}

void drawSignatures(PaperCanvas& canvas, const QRectF& area, const QStringList& whose) {
    const double caption = PaperCanvas::lineHeight(kSmallPrint);
    const double width = columnWidth(area.width(), static_cast<double>(whose.size()));
    double left = area.left();
    for (const QString& who : whose) {
        const QRectF where(left, area.bottom() - caption, width, caption);
        canvas.line(where.topLeft(), where.topRight());
        canvas.text(where, who, kCaption);
        left += width + kColumnGap;
    }
}

double footerHeight() {
    return PaperCanvas::lineHeight(kSmallPrint) + mm(1.0);
}

void drawFooter(PaperCanvas& canvas, const QRectF& area, const QString& printedAt,
                const QString& seal) {
    const QRectF where(area.left(), area.top() + mm(1.0), area.width(), area.height() - mm(1.0));
    canvas.text(where, Printed::tr("Printed %1").arg(printedAt), kCaption);
    if (!seal.isEmpty()) {
        canvas.text(where, Printed::tr("Seal of the logbook %1", "its number and digits").arg(seal),
                    {kSmallPrint, QFont::Normal, Qt::AlignHCenter | Qt::AlignVCenter});
    }
    canvas.text(where, Printed::tr("Page 1 of 1"),
                {kSmallPrint, QFont::Normal, Qt::AlignRight | Qt::AlignVCenter});
}

} // namespace coilbook
