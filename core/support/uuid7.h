#pragma once

#include <QUuid>

namespace coilbook {

/// A UUID of version 7 (RFC 9562, section 5.7): 48 bits of Unix milliseconds, then a counter that
/// rises within the process, then random bits. Ids made later sort later, also within one
/// millisecond, so rows are appended at the end of their table. Safe to call from any thread.
[[nodiscard]] QUuid makeUuid7();

} // namespace coilbook
