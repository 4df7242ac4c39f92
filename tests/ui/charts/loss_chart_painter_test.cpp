#include "ui/charts/loss_chart_painter.h"

#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

#include <cmath>

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
            {point.races, point.loss, point.loss - lbf(0.5), point.loss + lbf(0.5), true});
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

TEST(LossChartPainterTest, DrawsReadingsHollowAndCorrectedOnesFilled) {
    LossChartPainter painter;
    LossChart chart;
    chart.limit = lbf(5.0);
    chart.readings.resize(2);
    chart.readings[0].races = 3.0;
    chart.readings[1].races = 9.0;
    chart.readings[0].loss = chart.readings[1].loss = lbf(2.0);
    chart.readings[1].corrected = true;
    const QImage image = painted(painter, chart, ChartDetail::Enlarged);
    const QRectF plot = painter.plotArea(QRectF(image.rect()), ChartDetail::Enlarged, QFont());
    const auto centre = [&](double races) {
        return image.pixelColor(
            LossChartPainter::position(plot, kRange, races, lbf(2.0)).toPoint());
    };
    EXPECT_EQ(centre(3.0), lightScheme().panel);
    EXPECT_EQ(centre(9.0), lightScheme().reading);
}

TEST(LossChartPainterTest, DrawsAReadingAtTheEdgeOfTheScaleWhole) {
    LossChartPainter painter;
    LossChart chart;
    chart.limit = lbf(5.0);
    chart.readings.resize(1);
    chart.readings[0].loss = kRange.least; // at race 0: the very corner
    chart.readings[0].corrected = true;
    const QImage image = painted(painter, chart, ChartDetail::Enlarged);
    const QPointF corner =
        painter.plotArea(QRectF(image.rect()), ChartDetail::Enlarged, QFont()).topLeft();
    for (const QPointF& side : {QPointF(-2.0, 0.0), QPointF(2.0, 0.0), QPointF(0.0, -2.0)}) {
        EXPECT_EQ(image.pixelColor((corner + side).toPoint()), lightScheme().reading);
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

TEST(LossChartPainterTest, MarksSwapsOverRevsAndWhatWasSetAside) {
    LossChartPainter painter;
    const LossChart plain = chartLosing(0.3);
    const QImage without = painted(painter, plain, ChartDetail::Small);
    LossChart chart = plain;
    chart.marks = {{LossChart::Mark::Kind::OverRev, 4.0, QDate(), {}}};
    EXPECT_NE(painted(painter, chart, ChartDetail::Small), without);
    chart.marks = {{LossChart::Mark::Kind::Swap, 4.0, QDate(), {}}};
    EXPECT_NE(painted(painter, chart, ChartDetail::Small), without);
    chart = plain;
    chart.readings[4].setAside = true;
    EXPECT_NE(painted(painter, chart, ChartDetail::Small), without);
    EXPECT_NE(painted(painter, plain, ChartDetail::Small, QSize(400, 300), 4), without);
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
