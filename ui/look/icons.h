#pragma once

#include <QIcon>

namespace coilbook {

/// Our own pictures, one weight, drawn on a 16 × 16 field. Each stands beside a word, never alone.
enum class Picture {
    Coil, ///< the program itself
    Bench,
    Review,
    Sheet,
    Engine,
    New,
    Demo,
    Open,
    Import,
    Export,
    Backup,
    Undo,
    Redo,
    Caution,
    Saved,
    Locked,
    Close,
    Add,
    Amend,
    Race,
    Tester,
    Records,
    Settings,
    Retired,
};

/// The picture as an icon that is drawn in the text colour of the application's palette at the
/// moment of painting, so that it follows a change of scheme; paler where disabled.
[[nodiscard]] QIcon icon(Picture picture);

/// The same in one colour, e.g. that of a warning.
[[nodiscard]] QIcon icon(Picture picture, const QColor& colour);

} // namespace coilbook
