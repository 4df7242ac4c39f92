#include "tests/support/printers.h"
#include "ui/drawing/outlined_style.h"
#include "ui/look/theme.h"

#include <QApplication>
#include <QFontMetricsF>
#include <QStyle>
#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace coilbook;

namespace {

class ThemeTest : public ::testing::Test {
protected:
    ~ThemeTest() override {
        QApplication::setPalette(QPalette());
        QApplication::setFont(m_fontBefore);
    }

    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
    Preferences preferences{settings};

private:
    QFont m_fontBefore = QApplication::font();
};

TEST_F(ThemeTest, TellsLightFromDarkByTheSystemsColours) {
    QPalette light;
    light.setColor(QPalette::Window, QColor(0xF0, 0xF0, 0xF0));
    light.setColor(QPalette::WindowText, QColor(0x10, 0x10, 0x10));
    EXPECT_FALSE(isDarkPalette(light));
    QPalette dark;
    dark.setColor(QPalette::Window, QColor(0x20, 0x20, 0x20));
    dark.setColor(QPalette::WindowText, QColor(0xE0, 0xE0, 0xE0));
    EXPECT_TRUE(isDarkPalette(dark));
}

TEST_F(ThemeTest, FollowsTheSettingAtOnce) {
    const Theme theme(*qApp, preferences);
    preferences.setColourScheme(ColourScheme::Dark);
    EXPECT_TRUE(theme.isDark());
    EXPECT_TRUE(isDarkPalette(QApplication::palette()));
    preferences.setColourScheme(ColourScheme::Light);
    EXPECT_FALSE(theme.isDark());
    EXPECT_FALSE(isDarkPalette(QApplication::palette()));
    const auto* style = qobject_cast<const OutlinedStyle*>(QApplication::style());
    ASSERT_NE(style, nullptr);
    EXPECT_EQ(style->baseStyle()->name(), QStringLiteral("fusion"));
}

TEST_F(ThemeTest, GoesBackToTheSystemsColoursWhenAskedTo) {
    const bool system = isDarkPalette(QApplication::palette());
    const Theme theme(*qApp, preferences);
    preferences.setColourScheme(system ? ColourScheme::Light : ColourScheme::Dark);
    preferences.setColourScheme(ColourScheme::System);
    EXPECT_EQ(theme.isDark(), system);
}

TEST_F(ThemeTest, ScalesTextFromTheSystemsSizeAndNotFromItself) {
    const double system = QApplication::font().pointSizeF();
    const Theme theme(*qApp, preferences);
    preferences.setTextPercent(150);
    EXPECT_NEAR(QApplication::font().pointSizeF(), system * 1.5, 0.01);
    preferences.setTextPercent(125);
    EXPECT_NEAR(QApplication::font().pointSizeF(), system * 1.25, 0.01);
    preferences.setTextPercent(100);
    EXPECT_NEAR(QApplication::font().pointSizeF(), system, 0.01);
}

TEST_F(ThemeTest, SetsFiguresOfOneWidth) {
    const Theme theme(*qApp, preferences);
    const QFontMetricsF metrics(QApplication::font());
    for (char digit = '1'; digit <= '9'; ++digit) {
        EXPECT_DOUBLE_EQ(metrics.horizontalAdvance(QLatin1Char(digit)),
                         metrics.horizontalAdvance(QLatin1Char('0')))
            << digit;
    }
}

} // namespace
