#pragma once

#include <QFont>

namespace coilbook {

/// The program's typeface in `points`: Noto Sans (Debian package fonts-noto-core), whose figures
/// are all of one width; where it is missing, the system's own. `points` are of the paint device,
/// so the same call serves screen and paper.
[[nodiscard]] QFont programFont(double points, QFont::Weight weight = QFont::Normal);

/// The typeface's family, for style-wide settings.
[[nodiscard]] QString programFontFamily();

} // namespace coilbook
