#include "tests/support/printers.h"
#include "ui/drawing/standing_mark.h"

#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace coilbook {

namespace {

constexpr std::array kAll{Standing::PastLimit, Standing::Due, Standing::Sound, Standing::NoTrend};

/// The mark as a photocopy keeps it: no colour, levels 0 to 255.
QImage greyMark(const StandingMark& mark, const Scheme& scheme, const QSize& size) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(scheme.panel);
    QPainter painter(&image);
    drawStandingMark(painter, QRectF(QPointF(0, 0), QSizeF(size)), mark, scheme);
    painter.end();
    return image.convertToFormat(QImage::Format_Grayscale8);
}

/// Part of the dots whose level differs by more than a third of the whole scale.
double differingPart(const QImage& a, const QImage& b) {
    int differing = 0;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            if (std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y))) > 85) {
                ++differing;
            }
        }
    }
    return static_cast<double>(differing) / (a.width() * a.height());
}

double inkIn(const QImage& image, const QRect& part) {
    double ink = 0.0;
    const int ground = qGray(image.pixel(0, image.height() - 1));
    for (int y = part.top(); y <= part.bottom(); ++y) {
        for (int x = part.left(); x <= part.right(); ++x) {
            ink += std::abs(qGray(image.pixel(x, y)) - ground) / 255.0;
        }
    }
    return ink / (part.width() * part.height());
}

} // namespace

TEST(StandingMarkTest, StandingsDifferWithoutColourAtTheSameLoss) {
    // One dot in sixteen changed beyond doubt: our own threshold, no source.
    for (const Scheme& scheme : {lightScheme(), darkScheme(), paperScheme()}) {
        for (const double used : {0.0, 0.5, 0.9}) {
            for (const QSize& size : {QSize(12, 24), QSize(40, 80)}) {
                for (std::size_t a = 0; a < kAll.size(); ++a) {
                    for (std::size_t b = a + 1; b < kAll.size(); ++b) {
                        const double part =
                            differingPart(greyMark({kAll.at(a), used}, scheme, size),
                                          greyMark({kAll.at(b), used}, scheme, size));
                        EXPECT_GT(part, 1.0 / 16.0)
                            << "standings " << a << " and " << b << ", " << used << " used, "
                            << size.width() << " dots wide";
                    }
                }
            }
        }
    }
}

TEST(StandingMarkTest, FillGrowsWithThePartOfTheLimitThatIsUsedUp) {
    const QSize size(40, 80);
    const QRect bar(8, 0, 24, 54);
    double before = -1.0;
    for (const double used : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        const double ink = inkIn(greyMark({Standing::Sound, used}, paperScheme(), size), bar);
        EXPECT_GT(ink, before + 0.1) << used;
        before = ink;
    }
}

TEST(StandingMarkTest, OnlyASpringPastTheLimitReachesBelowTheLine) {
    const QRect below(0, 60, 40, 20);
    for (const Standing standing : kAll) {
        const double ink = inkIn(greyMark({standing, 1.5}, paperScheme(), QSize(40, 80)), below);
        if (standing == Standing::PastLimit) {
            EXPECT_GT(ink, 0.1);
        } else {
            EXPECT_LT(ink, 0.01);
        }
    }
}

TEST(StandingMarkTest, StaysInsideItsAreaWhateverTheLoss) {
    for (const Standing standing : kAll) {
        for (const double used : {-3.0, 0.0, 1.0, 400.0}) {
            QImage image(60, 100, QImage::Format_RGB32);
            image.fill(Qt::white);
            QPainter painter(&image);
            drawStandingMark(painter, QRectF(10, 10, 40, 80), {standing, used}, paperScheme());
            painter.end();
            for (int y = 0; y < image.height(); ++y) {
                for (int x = 0; x < image.width(); ++x) {
                    if (!QRect(9, 9, 42, 82).contains(x, y)) {
                        ASSERT_EQ(image.pixel(x, y), qRgb(255, 255, 255)) << x << ',' << y;
                    }
                }
            }
        }
    }
}

TEST(StandingMarkTest, LeavesThePainterAsItWas) {
    QImage image(40, 80, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.setPen(Qt::red);
    painter.setBrush(Qt::green);
    const bool smooth = painter.testRenderHint(QPainter::Antialiasing);
    drawStandingMark(painter, QRectF(0, 0, 40, 80), {Standing::NoTrend, {}}, lightScheme());
    EXPECT_EQ(painter.pen().color(), QColor(Qt::red));
    EXPECT_EQ(painter.pen().style(), Qt::SolidLine);
    EXPECT_EQ(painter.brush().color(), QColor(Qt::green));
    EXPECT_EQ(painter.testRenderHint(QPainter::Antialiasing), smooth);
}

TEST(StandingMarkTest, ComesFromTheMeasuredLossAndTheEnginesLimit) {
    SpringAssessment spring;
    spring.standing = Standing::Due;
    JudgingRules rules;
    rules.limit = Force::poundsForce(4.0);
    EXPECT_EQ(standingMarkOf(spring, rules), (StandingMark{Standing::Due, std::nullopt}));
    spring.measuredLoss = Force::poundsForce(3.0);
    EXPECT_EQ(standingMarkOf(spring, rules), (StandingMark{Standing::Due, 0.75}));
}

} // namespace coilbook
