#pragma once

#include "core/support/error.h"

#include <QString>

namespace coilbook::wording {

// What the window says while a logbook is not as it should be: whole sentences, plain text.

/// That entries wait: why, how many, what is safe, what to do.
[[nodiscard]] QString waitingEntries(int readings, int others, const Error& why);

/// `3 readings`, `1 entry`, `3 readings and 2 other entries`.
[[nodiscard]] QString waitingCount(int readings, int others);

/// That all of them are in the logbook now.
[[nodiscard]] QString waitingDone(int readings, int others);

/// That the logbook would not take some of them; `why` is the sentence that told so.
[[nodiscard]] QString waitingRefused(int entries, const QString& why);

/// Beside the sentence for a logbook that cannot be opened: that entries wait for it.
[[nodiscard]] QString waitingForUnopened(int readings, int others);

/// Why an open logbook can only be read, and what to do.
[[nodiscard]] QString readOnly(const Error& why);

/// What an export of a damaged logbook holds, and what not.
[[nodiscard]] QString salvaged(qint64 left, qint64 altered, bool hasGaps);

/// That whoever held it has closed it.
[[nodiscard]] QString canTakeOver();

} // namespace coilbook::wording
