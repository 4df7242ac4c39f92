#include "ui/charts/loss_chart_painter.h"

#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace coilbook {
namespace {

Force lbf(double value) {
    return Force::poundsForce(value);
}

const LossChartRange kRange{0.0, 12.0, 2.0, lbf(-1.0), lbf(8.0), lbf(1.0)};

LossChart chartLosing(double perRace) {
    LossChart chart;
    chart.baseline = lbf(121.5);
    chart.limit = lbf(5.0);
    for (int race = 0; race <= 8; ++race) {
        LossChart::Point point;
        point.races = race;
        point.loss = lbf(perRace * race);
        chart.readings.push_back(point);
        chart.estimate.push_back(
            {point.races, point.loss, point.loss - lbf(0.5), point.loss + lbf(0.5)});
    }
    return chart;
}

QImage painted(LossChartPainter& painter, const LossChart& chart, ChartDetail detail,
               const QSize& size = QSize(400, 300), std::optional<std::size_t> current = {}) {
    QImage image(size, QImage::Format_RGB32);
    const Scheme scheme = lightScheme();
    image.fill(scheme.panel);
    QPainter target(&image);
    painter.paint(target, QRectF(QPointF(), QSizeF(size)), chart, kRange, detail, scheme, current);
    return image;
}

/// How many pixels of a column have nearly this colour.
int countNear(const QImage& image, const QRect& within, const QColor& colour) {
    int found = 0;
    for (int y = within.top(); y <= within.bottom(); ++y) {
        for (int x = within.left(); x <= within.right(); ++x) {
            const QColor pixel = image.pixelColor(x, y);
            const int distance = std::abs(pixel.red() - colour.red()) +
                                 std::abs(pixel.green() - colour.green()) +
                                 std::abs(pixel.blue() - colour.blue());
            found += distance < 40 ? 1 : 0;
        }
    }
    return found;
}

/// The least of the lightnesses, 0 to 255, within.
int darkest(const QImage& image, const QRect& within) {
    int least = 255;
    for (int y = within.top(); y <= within.bottom(); ++y) {
        for (int x = within.left(); x <= within.right(); ++x) {
            least = std::min(least, image.pixelColor(x, y).lightness());
        }
    }
    return least;
}

TEST(LossChartPainterTest, PlacesLossDownwardAndRacesToTheRight) {
    const QRectF plot(100.0, 50.0, 240.0, 90.0);
    const QPointF start = LossChartPainter::position(plot, kRange, 0.0, lbf(-1.0));
    const QPointF end = LossChartPainter::position(plot, kRange, 12.0, lbf(8.0));
    EXPECT_EQ(start, plot.topLeft());
    EXPECT_EQ(end, plot.bottomRight());
    EXPECT_EQ(LossChartPainter::position(plot, kRange, 6.0, lbf(3.5)), plot.center());
}

TEST(LossChartPainterTest, DrawsTheLimitAtTheHeightThatTheScaleSays) {
    LossChartPainter painter;
    for (const ChartDetail detail : {ChartDetail::Small, ChartDetail::Enlarged}) {
        for (const double perRace : {0.0, 0.7}) {
            const QImage image = painted(painter, chartLosing(perRace), detail);
            const QRectF plot = painter.plotArea(QRectF(image.rect()), detail, QFont());
            const int y = static_cast<int>(
                std::lround(LossChartPainter::position(plot, kRange, 0.0, lbf(5.0)).y()));
            const QRect line(static_cast<int>(plot.left()) + 2, y - 1,
                             static_cast<int>(plot.width()) - 4, 3);
            EXPECT_GT(countNear(image, line, lightScheme().limit), line.width() / 2);
        }
    }
}

TEST(LossChartPainterTest, DrawsAReadingAsARingAndItsCorrectedPlaceAsADot) {
    LossChartPainter painter;
    LossChart chart;
    chart.limit = lbf(5.0);
    chart.readings.resize(2);
    chart.readings[0].races = 3.0;
    chart.readings[1].races = 9.0;
    chart.readings[0].loss = lbf(2.0);
    chart.readings[1].loss = lbf(6.0);
    chart.readings[1].corrected = lbf(2.0);
    const QImage image = painted(painter, chart, ChartDetail::Enlarged);
    const QRectF plot = painter.plotArea(QRectF(image.rect()), ChartDetail::Enlarged, QFont());
    const auto centre = [&](double races) {
        return image.pixelColor(
            LossChartPainter::position(plot, kRange, races, lbf(2.0)).toPoint());
    };
    EXPECT_EQ(centre(3.0), lightScheme().panel);
    EXPECT_EQ(centre(9.0), lightScheme().reading);
    const double x = LossChartPainter::position(plot, kRange, 9.0, lbf(4.0)).x();
    const double y = LossChartPainter::position(plot, kRange, 9.0, lbf(4.0)).y();
    const QRect between(static_cast<int>(x) - 2, static_cast<int>(y), 5, 1);
    EXPECT_LT(darkest(image, between), 160) << "a stroke joins the two";
}

TEST(LossChartPainterTest, DrawsAReadingAtTheEdgeOfTheScaleWhole) {
    LossChartPainter painter;
    LossChart chart;
    chart.limit = lbf(5.0);
    chart.readings.resize(1);
    chart.readings[0].loss = kRange.least; // at race 0: the very corner
    const QImage image = painted(painter, chart, ChartDetail::Enlarged);
    const QPoint corner =
        painter.plotArea(QRectF(image.rect()), ChartDetail::Enlarged, QFont()).topLeft().toPoint();
    const int reach = QFontMetrics(QFont()).height() / 2; // beyond the ring
    for (const QRect& side :
         {QRect(corner - QPoint(reach, 0), QSize(reach, 1)), QRect(corner, QSize(reach, 1)),
          QRect(corner - QPoint(0, reach), QSize(1, reach))}) {
        EXPECT_LT(darkest(image, side), 100);
    }
}

TEST(LossChartPainterTest, LeavesNothingOfOneSpringInTheChartOfTheNext) {
    LossChartPainter reused;
    (void)painted(reused, chartLosing(0.7), ChartDetail::Enlarged);
    (void)painted(reused, chartLosing(0.7), ChartDetail::Small, QSize(200, 80));
    LossChartPainter fresh;
    const LossChart next = chartLosing(0.2);
    EXPECT_EQ(painted(reused, next, ChartDetail::Small), painted(fresh, next, ChartDetail::Small));
    EXPECT_EQ(painted(reused, next, ChartDetail::Enlarged),
              painted(fresh, next, ChartDetail::Enlarged));
}

TEST(LossChartPainterTest, EveryMarkAndEveryFindingLooksDifferent) {
    LossChartPainter painter;
    const LossChart plain = chartLosing(0.3);
    const QImage without = painted(painter, plain, ChartDetail::Small);
    LossChart chart = plain;
    std::vector<QImage> marked{without};
    for (const auto kind : {LossChart::Mark::Kind::OverRev, LossChart::Mark::Kind::Swap,
                            LossChart::Mark::Kind::LevelChange, LossChart::Mark::Kind::Running}) {
        chart.marks = {{kind, 4.0, QDate(), {}}};
        const QImage image = painted(painter, chart, ChartDetail::Small);
        EXPECT_EQ(std::count(marked.begin(), marked.end(), image), 0) << static_cast<int>(kind);
        marked.push_back(image);
    }
    chart = plain;
    std::vector<QImage> seen{without};
    for (const auto kind :
         {EventFinding::Kind::Misread, EventFinding::Kind::Drop, EventFinding::Kind::PendingDrop}) {
        chart.readings[4].event = EventFinding{kind, 4, 0.5};
        const QImage image = painted(painter, chart, ChartDetail::Small);
        EXPECT_EQ(std::count(seen.begin(), seen.end(), image), 0) << static_cast<int>(kind);
        seen.push_back(image);
    }
    EXPECT_NE(painted(painter, plain, ChartDetail::Small, QSize(400, 300), 4), without);
}

TEST(LossChartPainterTest, AProvisionalEstimateHasAPalerBandAndABrokenLine) {
    LossChartPainter painter;
    LossChart chart = chartLosing(0.3);
    chart.readings.clear();
    for (const ChartDetail detail : {ChartDetail::Small, ChartDetail::Enlarged}) {
        chart.provisional = false;
        const QImage firm = painted(painter, chart, detail);
        chart.provisional = true;
        const QImage provisional = painted(painter, chart, detail);
        const Scheme scheme = lightScheme();
        const QRect plot = painter.plotArea(firm.rect(), detail, QFont()).toRect();
        EXPECT_GT(countNear(firm, plot, scheme.band),
                  countNear(provisional, plot, scheme.band) + plot.width());
        EXPECT_LT(countNear(provisional, plot, scheme.estimate),
                  countNear(firm, plot, scheme.estimate) * 3 / 4);
    }
}

TEST(LossChartPainterTest, DrawsAnEmptyChartAndRefusesAreasWithoutRoom) {
    LossChartPainter painter;
    LossChart chart;
    chart.limit = lbf(5.0);
    EXPECT_FALSE(painted(painter, chart, ChartDetail::Enlarged).isNull());
    EXPECT_FALSE(painted(painter, chart, ChartDetail::Small, QSize(3, 3)).isNull());
}

} // namespace
} // namespace coilbook
