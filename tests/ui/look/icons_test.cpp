#include "tests/support/printers.h"
#include "ui/look/icons.h"

#include <QApplication>
#include <QPalette>
#include <gtest/gtest.h>

using namespace coilbook;

namespace {

/// Pixels that carry ink of about that colour.
int inked(const QIcon& icon, const QColor& colour, QIcon::Mode mode = QIcon::Normal) {
    const QImage image =
        icon.pixmap(QSize(16, 16), 1.0, mode).toImage().convertToFormat(QImage::Format_ARGB32);
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor pixel = image.pixelColor(x, y);
            if (pixel.alpha() > 128 && std::abs(pixel.lightness() - colour.lightness()) < 16) {
                ++count;
            }
        }
    }
    return count;
}

TEST(IconsTest, DrawsEveryPictureLegiblyAtSixteenPixels) {
    const QPalette before = QApplication::palette();
    for (const QColor& ink : {QColor(Qt::black), QColor(Qt::white)}) {
        QPalette palette = before;
        palette.setColor(QPalette::WindowText, ink);
        QApplication::setPalette(palette);
        for (int i = 0; i <= static_cast<int>(Picture::Retired); ++i) {
            const int pixels = inked(icon(static_cast<Picture>(i)), ink);
            EXPECT_GT(pixels, 14) << "picture " << i;
            EXPECT_LT(pixels, 150) << "picture " << i;
        }
    }
    QApplication::setPalette(before);
}

TEST(IconsTest, PicturesDiffer) {
    QSet<QByteArray> seen;
    const int count = static_cast<int>(Picture::Retired) + 1;
    for (int i = 0; i < count; ++i) {
        const QImage image = icon(static_cast<Picture>(i)).pixmap(QSize(16, 16), 1.0).toImage();
        seen.insert(QByteArray(reinterpret_cast<const char*>(image.constBits()),
                               static_cast<qsizetype>(image.sizeInBytes())));
    }
    EXPECT_EQ(seen.size(), count);
}

TEST(IconsTest, TakesTheColourThatItIsGiven) {
    EXPECT_GT(inked(icon(Picture::Caution, Qt::red), Qt::red), 10);
}

} // namespace
