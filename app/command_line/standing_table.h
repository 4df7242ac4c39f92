#pragma once

#include "core/assessment/assessment.h"

#include <QStringList>

namespace coilbook {

/// One engine's standing as lines of text for a terminal: what is to be done first, then a table of
/// the springs, then the reasons spring by spring.
[[nodiscard]] QStringList standingTable(const Assessment& assessment);

} // namespace coilbook
