#pragma once

#include <QString>
#include <QStringView>

namespace coilbook {

/// Whether a spreadsheet may take a text that begins like this for a formula, or for our guard.
[[nodiscard]] inline bool needsFormulaGuard(QStringView text) {
    return !text.isEmpty() && QStringView(u"=+-@\t\r'").contains(text.front());
}

/// The text with one `'` in front where it needs a guard.
[[nodiscard]] inline QString guarded(const QString& text) {
    return needsFormulaGuard(text) ? QLatin1Char('\'') + text : text;
}

/// Inverse of guarded(): takes one `'` away when it guards something.
[[nodiscard]] inline QString unguarded(const QString& text) {
    const bool isGuarded =
        text.startsWith(QLatin1Char('\'')) && needsFormulaGuard(QStringView(text).mid(1));
    return isGuarded ? text.mid(1) : text;
}

} // namespace coilbook
