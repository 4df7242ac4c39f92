#pragma once

#include "ui/drawing/scheme.h"
#include "ui/preferences.h"

#include <QFont>
#include <QObject>

class QApplication;

namespace coilbook {

/// Gives the application its look: Fusion in the palette of our light or dark scheme, and our font
/// in the chosen size. Follows the preferences, and the system's light or dark while they say so.
class Theme : public QObject {
    Q_OBJECT
public:
    /// Both must outlive this. Applies the look at once.
    Theme(QApplication& application, Preferences& preferences);

    [[nodiscard]] bool isDark() const { return m_dark; }

    /// Notices that the system went light or dark.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    /// Looks at the palette that the system would give us.
    void readSystem();
    /// Applies what the preferences and the system say now, as far as it is news.
    void apply();

    Preferences& m_preferences;
    QFont m_systemFont;
    bool m_systemDark = false;
    bool m_dark = false;
    int m_percent = 0; ///< 0: nothing applied yet
};

/// Dark when text on a window is lighter than the window itself. Qt 6.4 does not tell otherwise.
[[nodiscard]] bool isDarkPalette(const QPalette& palette);

/// The program's typeface in `percent` of the system's size.
[[nodiscard]] QFont textFont(const QFont& system, int percent);

} // namespace coilbook
