#pragma once

#include "core/support/error.h"

#include <QString>

namespace coilbook::wording {

/// The sentence for one kind of fault; `error.arguments` as documented at the enumerator. Text that
/// came from a file is escaped with shown(). Used by wording::sentence() only.
[[nodiscard]] QString sentenceOf(StorageFault fault, const Error& error);
[[nodiscard]] QString sentenceOf(InputFault fault, const Error& error);
[[nodiscard]] QString sentenceOf(LogbookFault fault, const Error& error);

} // namespace coilbook::wording
