#include "tests/ui/drawing/contrast.h"
#include "ui/drawing/outlined_style.h"
#include "ui/drawing/scheme.h"

#include <QCheckBox>
#include <QImage>
#include <QLineEdit>
#include <QPainter>
#include <QRadioButton>
#include <gtest/gtest.h>

namespace coilbook {

namespace {

/// The strongest contrast with the window's ground that any dot of the widget has.
double strongestContrast(QWidget& widget, OutlinedStyle& style, const Scheme& scheme) {
    widget.setStyle(&style);
    widget.setPalette(paletteOf(scheme));
    widget.resize(40, 24);
    QImage image(widget.size(), QImage::Format_RGB32);
    image.fill(scheme.ground);
    widget.render(&image, {}, {}, QWidget::RenderFlags());
    double strongest = 1.0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            strongest =
                std::max(strongest, testing::contrast(QColor(image.pixel(x, y)), scheme.ground));
        }
    }
    return strongest;
}

} // namespace

TEST(OutlinedStyleTest, EmptyControlsCanBeMadeOutInBothSchemes) {
    // 3:1: WCAG 2.2, 1.4.11 Non-text Contrast. The controls have no text and no mark in them.
    for (const Scheme& scheme : {lightScheme(), darkScheme()}) {
        OutlinedStyle style; // outlives the widgets
        QRadioButton radio;
        QCheckBox check;
        QLineEdit field;
        EXPECT_GE(strongestContrast(radio, style, scheme), 3.0);
        EXPECT_GE(strongestContrast(check, style, scheme), 3.0);
        EXPECT_GE(strongestContrast(field, style, scheme), 3.0);
    }
}

} // namespace coilbook
