#include "ui/look/theme.h"

#include "ui/drawing/fonts.h"
#include "ui/drawing/outlined_style.h"

#include <QApplication>
#include <QEvent>

namespace coilbook {

namespace {

/// Where the system names no size in points.
constexpr double kFallbackPoints = 10.0;

} // namespace

bool isDarkPalette(const QPalette& palette) {
    return palette.color(QPalette::WindowText).lightnessF() >
           palette.color(QPalette::Window).lightnessF();
}

QFont textFont(const QFont& system, int percent) {
    QFont font = system;
    font.setFamilies({programFontFamily()});
    const double points = system.pointSizeF() > 0 ? system.pointSizeF() : kFallbackPoints;
    font.setPointSizeF(points * percent / 100.0);
    return font;
}

Theme::Theme(QApplication& application, Preferences& preferences)
    : m_preferences(preferences)
    , m_systemFont(QApplication::font()) {
    QApplication::setStyle(new OutlinedStyle); // the application owns it
    readSystem();
    apply();
    connect(&preferences, &Preferences::changed, this, &Theme::apply);
    application.installEventFilter(this);
}

void Theme::readSystem() {
    QApplication::setPalette(QPalette()); // takes our own one away
    m_systemDark = isDarkPalette(QApplication::palette());
    m_percent = 0;
}

void Theme::apply() {
    const ColourScheme scheme = m_preferences.colourScheme();
    const bool dark = scheme == ColourScheme::System ? m_systemDark : scheme == ColourScheme::Dark;
    const int percent = m_preferences.textPercent();
    if (m_percent == 0 || dark != m_dark) {
        QApplication::setPalette(paletteOf(dark ? darkScheme() : lightScheme()));
    }
    if (percent != m_percent) {
        QApplication::setFont(textFont(m_systemFont, percent));
    }
    m_dark = dark;
    m_percent = percent;
}

bool Theme::eventFilter(QObject* watched, QEvent* event) {
    // Sent to every window when the desktop changes its look; one of them is enough.
    if (event->type() == QEvent::ThemeChange && watched->isWindowType()) {
        readSystem();
        apply();
    }
    return QObject::eventFilter(watched, event);
}

} // namespace coilbook
