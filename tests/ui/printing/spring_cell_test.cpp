#include "tests/support/printers.h"
#include "tests/ui/printing/sample_sheet.h"
#include "ui/printing/loss_trend.h"
#include "ui/printing/paper_plan.h"
#include "ui/printing/spring_cell.h"

#include <QImage>
#include <gtest/gtest.h>

#include <set>
#include <vector>

namespace coilbook {

namespace {

using testing::layoutWith;

const QRectF kPlanArea(mm(10), mm(50), mm(190), mm(130));

double widthInSmallPrint(const char* text, QFont::Weight weight) {
    return PaperCanvas::textWidth(QString::fromUtf8(text), {kSmallPrint, weight});
}

} // namespace

TEST(SpringCellTest, NumbersKeepAllTheirDigitsInEveryEngine) {
    // The longest that the contract's bounds allow: 1000 lbf with one decimal, 4448 N; a loss of
    // a hundred is far beyond any spring that still closes a valve.
    for (const EngineLayout& engine : {defaultLayout(), layoutWith(1, 4), layoutWith(1, 24),
                                       layoutWith(2, 12), layoutWith(3, 8), layoutWith(6, 4)}) {
        const EnginePlanLayout plan = layOutPaperPlan(engine, kPlanArea, mm(16));
        for (const bool notes : {false, true}) {
            const SpringCellLayout cell = layOutSpringCell(plan.spots.front().area.size(), notes);
            EXPECT_GE(cell.baseline.width(), widthInSmallPrint("1000.0", QFont::Normal));
            EXPECT_GE(cell.latest.width(), widthInSmallPrint("1000.0", QFont::Normal));
            EXPECT_GE(cell.loss.width(), widthInSmallPrint("−100.0", QFont::Bold));
            EXPECT_GE(
                cell.standing.width(),
                PaperCanvas::textWidth(QStringLiteral("due within 60 races"), {9.0, QFont::Bold}));
        }
    }
}

TEST(SpringCellTest, PartsLieInsideTheCellAndApart) {
    for (const QSizeF& size :
         {QSizeF(mm(91), mm(16)), QSizeF(mm(91), mm(5.5)), QSizeF(mm(61), mm(9)),
          QSizeF(mm(61), mm(7)), QSizeF(mm(120), mm(16))}) {
        for (const bool notes : {false, true}) {
            const SpringCellLayout cell = layOutSpringCell(size, notes);
            const std::vector<QRectF> parts{cell.place,    cell.mark,   cell.label,
                                            cell.baseline, cell.latest, cell.loss,
                                            cell.standing, cell.note,   cell.trend};
            for (std::size_t i = 0; i < parts.size(); ++i) {
                if (parts[i].isNull()) {
                    continue;
                }
                EXPECT_TRUE(QRectF(QPointF(), size).contains(parts[i])) << i;
                for (std::size_t j = i + 1; j < parts.size(); ++j) {
                    EXPECT_FALSE(parts[i].intersects(parts[j])) << i << " and " << j;
                }
            }
        }
    }
}

TEST(SpringCellTest, NotesSayOnWhatTheStandingRests) {
    SheetSpring spring;
    EXPECT_EQ(springNotes(spring), QString());
    spring.pastBy = PastBy::Measured;
    EXPECT_EQ(springNotes(spring), QStringLiteral("test again before swapping"));
    spring.pastBy = PastBy::Estimate;
    spring.estimatedLoss = QStringLiteral("5.2 lbf");
    spring.offTrend = true;
    EXPECT_EQ(springNotes(spring), QStringLiteral("by estimate: 5.2 lbf; off its trend"));
}

TEST(PaperPlanTest, HasEveryPlaceOnceInsideItsAreaInTheEnginesOrder) {
    for (const EngineLayout& engine :
         {defaultLayout(), layoutWith(1, 24), layoutWith(3, 8), layoutWith(5, 4)}) {
        const EnginePlanLayout plan = layOutPaperPlan(engine, kPlanArea, mm(16));
        std::vector<Place> drawn;
        for (const auto& spot : plan.spots) {
            drawn.push_back(spot.place);
            EXPECT_TRUE(kPlanArea.adjusted(-1, -1, 1, 1).contains(spot.area));
        }
        std::vector<Place> expected;
        for (const Bank& bank : engine.banks) {
            expected.insert(expected.end(), bank.places.begin(), bank.places.end());
        }
        EXPECT_EQ(drawn, expected);
    }
}

TEST(LossTrendTest, LimitLiesAtTheSameHeightInEveryChart) {
    const SheetContent content = testing::sampleSheet();
    std::set<int> heights;
    for (const SheetSpring& spring : content.springs) {
        LossChart bare = spring.chart;
        bare.readings.clear();
        bare.estimate.clear();
        bare.projection.clear();
        bare.marks.clear();
        QImage image(210, 297, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        {
            PaperCanvas canvas(painter, image.rect(), Paper::A4);
            drawLossTrend(canvas, QRectF(mm(20), mm(20), mm(60), mm(80)), bare, content.range);
        }
        painter.end();
        for (int y = 40; y < 100; ++y) {
            if (qGray(image.pixel(60, y)) < 230) {
                heights.insert(y);
            }
        }
    }
    // 5 lbf on a scale from −1 to 8 lbf over 80 mm: two thirds of the way down.
    ASSERT_FALSE(heights.empty());
    EXPECT_LE(*heights.rbegin() - *heights.begin(), 1);
    EXPECT_NEAR(*heights.begin(), 20.0 + 80.0 * 2.0 / 3.0, 1.5);
}

} // namespace coilbook
