#include "tests/support/printers.h"
#include "tests/ui/printing/sample_sheet.h"
#include "ui/printing/paper_canvas.h"
#include "ui/printing/round_form.h"
#include "ui/printing/sheet_painter.h"

#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <vector>

namespace coilbook {

namespace {

using testing::layoutWith;
using testing::overlongSheet;
using testing::sampleForm;
using testing::sampleSheet;

constexpr double kDotsPerInch = 100.0;

double dots(double units) {
    return units / mm(25.4) * kDotsPerInch;
}

template <class Content, class Paint>
QImage imageOf(const Content& content, Paper paper, Paint paint) {
    const QSizeF sheet = sheetSize(paper);
    QImage image(static_cast<int>(std::lround(dots(sheet.width()))),
                 static_cast<int>(std::lround(dots(sheet.height()))), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paint(painter, QRectF(image.rect()), paper, content);
    return image;
}

bool isBlank(const QImage& image, const QRect& part) {
    for (int y = part.top(); y <= part.bottom(); ++y) {
        for (int x = part.left(); x <= part.right(); ++x) {
            if (image.pixel(x, y) != qRgb(255, 255, 255)) {
                return false;
            }
        }
    }
    return true;
}

void expectInsideMargins(const QImage& image) {
    // One dot may be touched by the smoothing of a line that lies on the margin.
    const int margin = static_cast<int>(dots(kPageMargin)) - 1;
    const int width = image.width();
    const int height = image.height();
    EXPECT_TRUE(isBlank(image, QRect(0, 0, width, margin))) << "top";
    EXPECT_TRUE(isBlank(image, QRect(0, height - margin, width, margin))) << "bottom";
    EXPECT_TRUE(isBlank(image, QRect(0, 0, margin, height))) << "left";
    EXPECT_TRUE(isBlank(image, QRect(width - margin, 0, margin, height))) << "right";
    EXPECT_FALSE(isBlank(image, image.rect()));
}

std::vector<EngineLayout> engines() {
    return {defaultLayout(),   layoutWith(1, 4), layoutWith(1, 24), layoutWith(2, 3),
            layoutWith(2, 12), layoutWith(3, 8), layoutWith(4, 4),  layoutWith(6, 4)};
}

} // namespace

TEST(SheetPainterTest, NothingIsDrawnOutsideTheMargins) {
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        for (const EngineLayout& layout : engines()) {
            SCOPED_TRACE(layoutToText(layout).toStdString());
            expectInsideMargins(imageOf(sampleSheet(layout), paper, paintSheet));
            SheetContent shifted = sampleSheet(layout);
            shifted.shift =
                QStringLiteral("This inspection reads low on all springs. ").repeated(7);
            expectInsideMargins(imageOf(shifted, paper, paintSheet));
            expectInsideMargins(imageOf(sampleForm(layout), paper, paintRoundForm));
        }
        SCOPED_TRACE("overlong");
        expectInsideMargins(imageOf(overlongSheet(), paper, paintSheet));
    }
}

TEST(SheetPainterTest, PrintsInBlackAndGreyOnly) {
    const QImage image = imageOf(sampleSheet(), Paper::A4, paintSheet);
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QRgb dot = image.pixel(x, y);
            ASSERT_TRUE(qRed(dot) == qGreen(dot) && qGreen(dot) == qBlue(dot)) << x << ',' << y;
        }
    }
}

TEST(SheetPainterTest, LeavesThePainterAsItWas) {
    QImage image(210, 297, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.setPen(Qt::red);
    paintSheet(painter, image.rect(), Paper::A4, sampleSheet());
    EXPECT_EQ(painter.pen().color(), QColor(Qt::red));
    EXPECT_TRUE(painter.transform().isIdentity());
}

TEST(SheetPainterTest, EngineWithoutAnyInspectionStillMakesASheet) {
    SheetContent content;
    content.engine = QStringLiteral("New");
    content.layout = defaultLayout();
    for (const Bank& bank : content.layout.banks) {
        for (const Place& place : bank.places) {
            content.springs.push_back({});
            content.springs.back().place = place;
        }
    }
    expectInsideMargins(imageOf(content, Paper::Letter, paintSheet));
}

} // namespace coilbook
