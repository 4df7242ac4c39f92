#pragma once

#include <QString>

namespace coilbook {

/// Text as the logbook keeps it: white space trimmed at both ends, Unicode form NFC.
[[nodiscard]] QString normalised(const QString& text);

/// The key under which two names count as the same but for case.
[[nodiscard]] QString caseKey(const QString& text);

/// Text from a file made fit for a message: control characters shown as `\n`, `\t` or `\u{1B}`,
/// and cut with an ellipsis after `longest` characters.
[[nodiscard]] QString shown(const QString& text, qsizetype longest = 60);

} // namespace coilbook
