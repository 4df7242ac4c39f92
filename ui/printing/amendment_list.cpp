#include "ui/printing/amendment_list.h"

#include "ui/printing/printed_words.h"

#include <algorithm>
#include <array>

namespace coilbook {

namespace {

constexpr double kHeadingSize = 9.0; ///< points
constexpr double kColumnGap = mm(2.0);
// Parts of the width: date, what, old value, new value, who, why.
constexpr std::array kParts{0.10, 0.25, 0.13, 0.13, 0.13, 0.26};

double rowHeight() {
    return PaperCanvas::lineHeight(kSmallPrint) + mm(0.3);
}

double headingHeight() {
    return PaperCanvas::lineHeight(kHeadingSize);
}

double heightOf(std::size_t rows) {
    return headingHeight() + static_cast<double>(rows) * rowHeight();
}

QString heading(const SheetContent& content) {
    if (content.amendedSince.isEmpty()) {
        return content.amendments.empty() ? Printed::tr("Nothing was amended.")
                                          : Printed::tr("Amended");
    }
    return content.amendments.empty()
               ? Printed::tr("Nothing was amended since the inspection of %1.")
                     .arg(content.amendedSince)
               : Printed::tr("Amended since the inspection of %1").arg(content.amendedSince);
}

void drawRow(PaperCanvas& canvas, const QRectF& row, const SheetAmendment& amendment) {
    const std::array texts{amendment.on,       amendment.what, amendment.oldValue,
                           amendment.newValue, amendment.who,  amendment.why};
    constexpr std::size_t kOldValue = 2;
    double left = row.left();
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const double width = row.width() * kParts.at(i);
        TextStyle style;
        style.struckOut = i == kOldValue;
        canvas.text(QRectF(left, row.top(), width - kColumnGap, row.height()), texts.at(i), style);
        left += width;
    }
}

} // namespace

double amendmentListHeight(const SheetContent& content) {
    return heightOf(content.amendments.size());
}

double leastAmendmentListHeight(const SheetContent& content) {
    return heightOf(std::min<std::size_t>(content.amendments.size(), 2));
}

void drawAmendmentList(PaperCanvas& canvas, const QRectF& area, const SheetContent& content) {
    canvas.text(QRectF(area.left(), area.top(), area.width(), headingHeight()), heading(content),
                {kHeadingSize, QFont::Bold});
    const double room = std::max(0.0, area.height() - headingHeight()) / rowHeight() + 1e-6;
    const auto rows = static_cast<std::size_t>(room);
    const std::size_t all = content.amendments.size();
    const std::size_t shown = all <= rows ? all : std::max<std::size_t>(rows, 1) - 1;
    QRectF row(area.left(), area.top() + headingHeight(), area.width(), rowHeight());
    for (std::size_t i = 0; i < shown; ++i) {
        drawRow(canvas, row, content.amendments[i]);
        row.translate(0.0, rowHeight());
    }
    if (shown < all) {
        canvas.text(row, Printed::tr("and %1 more, see the logbook").arg(all - shown));
    }
}

} // namespace coilbook
