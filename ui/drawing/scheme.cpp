#include "ui/drawing/scheme.h"

#include <cmath>

namespace coilbook {

namespace {

// The set that people with any kind of colour vision can tell apart: M. Okabe, K. Ito, "Color
// Universal Design" (2008). Yellow is left out: it cannot be seen on a light ground.
constexpr QRgb kOrange = 0xFFE69F00;
constexpr QRgb kSkyBlue = 0xFF56B4E9;
constexpr QRgb kBluishGreen = 0xFF009E73;
constexpr QRgb kBlue = 0xFF0072B2;
constexpr QRgb kVermillion = 0xFFD55E00;
constexpr QRgb kReddishPurple = 0xFFCC79A7;

QColor grey(int level) {
    return QColor(level, level, level);
}

/// `part` of the way from one colour to the other, per channel.
QColor mixed(const QColor& from, const QColor& to, double part) {
    const auto between = [part](int a, int b) {
        return static_cast<int>(std::lround(a + (b - a) * part));
    };
    return QColor(between(from.red(), to.red()), between(from.green(), to.green()),
                  between(from.blue(), to.blue()));
}

/// The same hue with less light, for a light ground.
QColor shade(QRgb colour, double part) {
    return mixed(QColor(colour), Qt::black, part);
}

/// The same hue with more light, for a dark ground.
QColor tint(QRgb colour, double part) {
    return mixed(QColor(colour), Qt::white, part);
}

bool isDark(const QColor& ground, const QColor& text) {
    return qGray(ground.rgb()) < qGray(text.rgb());
}

} // namespace

QColor Scheme::of(Standing standing) const {
    switch (standing) {
    case Standing::PastLimit:
        return pastLimit;
    case Standing::Due:
        return due;
    case Standing::Sound:
        return sound;
    case Standing::NoTrend:
        break;
    }
    return noTrend;
}

Scheme lightScheme() {
    Scheme scheme;
    scheme.ground = QColor(0xF3, 0xF3, 0xF0);
    scheme.panel = Qt::white;
    scheme.text = grey(0x1A);
    scheme.mutedText = grey(0x59);
    scheme.line = grey(0x6E);
    scheme.grid = grey(0xDC);
    scheme.limit = shade(kVermillion, 0.2);
    scheme.estimate = QColor(kBlue);
    scheme.band = tint(kSkyBlue, 0.62);
    scheme.provisionalBand = tint(kSkyBlue, 0.82);
    scheme.reading = grey(0x1A);
    scheme.overRev = shade(kOrange, 0.28);
    scheme.accent = shade(kBlue, 0.1);
    scheme.pastLimit = shade(kVermillion, 0.2);
    scheme.due = shade(kReddishPurple, 0.3);
    scheme.sound = shade(kBluishGreen, 0.25);
    scheme.noTrend = grey(0x5C);
    return scheme;
}

Scheme darkScheme() {
    Scheme scheme;
    scheme.ground = QColor(0x17, 0x19, 0x1C);
    scheme.panel = QColor(0x22, 0x26, 0x2A);
    scheme.text = grey(0xEC);
    scheme.mutedText = QColor(0xA9, 0xB0, 0xB6);
    scheme.line = QColor(0x8A, 0x92, 0x99);
    scheme.grid = QColor(0x3A, 0x40, 0x46);
    scheme.limit = tint(kVermillion, 0.15);
    scheme.estimate = QColor(kSkyBlue);
    scheme.band = shade(kBlue, 0.42);
    scheme.provisionalBand = shade(kBlue, 0.62);
    scheme.reading = grey(0xEC);
    scheme.overRev = QColor(kOrange);
    scheme.accent = QColor(kSkyBlue);
    scheme.pastLimit = tint(kVermillion, 0.2);
    scheme.due = tint(kReddishPurple, 0.1);
    scheme.sound = tint(kBluishGreen, 0.2);
    scheme.noTrend = QColor(0xA9, 0xB0, 0xB6);
    return scheme;
}

Scheme paperScheme() {
    Scheme scheme;
    scheme.ground = Qt::white;
    scheme.panel = Qt::white;
    scheme.text = Qt::black;
    scheme.mutedText = grey(0x33);
    scheme.line = Qt::black;
    scheme.grid = grey(0xB4);
    scheme.limit = Qt::black;
    scheme.estimate = Qt::black;
    scheme.band = grey(0xD8);
    scheme.provisionalBand = grey(0xEC);
    scheme.reading = Qt::black;
    scheme.overRev = Qt::black;
    scheme.accent = Qt::black;
    scheme.pastLimit = Qt::black;
    scheme.due = Qt::black;
    scheme.sound = Qt::black;
    scheme.noTrend = Qt::black;
    return scheme;
}

Scheme schemeFor(const QPalette& palette) {
    const bool dark = isDark(palette.color(QPalette::Active, QPalette::Window),
                             palette.color(QPalette::Active, QPalette::WindowText));
    return dark ? darkScheme() : lightScheme();
}

QPalette paletteOf(const Scheme& scheme) {
    const bool dark = isDark(scheme.ground, scheme.text);
    const QColor button =
        dark ? mixed(scheme.panel, Qt::white, 0.08) : mixed(scheme.ground, Qt::white, 0.5);
    // Bevels and frames of the standard widgets go from light to shadow around the button's colour.
    const QColor light = dark ? mixed(button, Qt::white, 0.16) : QColor(Qt::white);
    const QColor dim = mixed(scheme.text, scheme.panel, dark ? 0.52 : 0.45);

    QPalette palette;
    const auto set = [&palette](QPalette::ColorRole role, const QColor& active,
                                const QColor& disabled) {
        palette.setColor(QPalette::Active, role, active);
        palette.setColor(QPalette::Inactive, role, active);
        palette.setColor(QPalette::Disabled, role, disabled);
    };
    const auto setAll = [&set](QPalette::ColorRole role, const QColor& colour) {
        set(role, colour, colour);
    };
    setAll(QPalette::Window, scheme.ground);
    set(QPalette::WindowText, scheme.text, dim);
    set(QPalette::Base, scheme.panel, scheme.ground);
    setAll(QPalette::AlternateBase, mixed(scheme.panel, scheme.ground, dark ? 0.4 : 0.6));
    set(QPalette::Text, scheme.text, dim);
    set(QPalette::PlaceholderText, scheme.mutedText, dim);
    setAll(QPalette::Button, button);
    set(QPalette::ButtonText, scheme.text, dim);
    setAll(QPalette::BrightText, dark ? QColor(Qt::white) : QColor(Qt::black));
    setAll(QPalette::Light, light);
    setAll(QPalette::Midlight, mixed(button, light, 0.5));
    setAll(QPalette::Mid, mixed(button, Qt::black, dark ? 0.3 : 0.28));
    setAll(QPalette::Dark, mixed(button, Qt::black, dark ? 0.5 : 0.42));
    setAll(QPalette::Shadow, mixed(button, Qt::black, 0.75));
    set(QPalette::Highlight, scheme.accent, mixed(scheme.accent, scheme.ground, 0.6));
    set(QPalette::HighlightedText, dark ? QColor(scheme.ground) : QColor(Qt::white), dim);
    set(QPalette::Link, scheme.estimate, dim);
    set(QPalette::LinkVisited, scheme.due, dim);
    setAll(QPalette::ToolTipBase, scheme.text);
    setAll(QPalette::ToolTipText, scheme.ground);
    return palette;
}

} // namespace coilbook
