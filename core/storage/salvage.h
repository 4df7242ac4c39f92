#pragma once

#include "core/support/result.h"

#include <QString>
#include <QTemporaryDir>

#include <memory>

namespace coilbook {

/// What could be read of a damaged logbook, as a sound one in a passing folder.
struct Salvaged {
    std::shared_ptr<QTemporaryDir> folder; ///< goes with the last one who holds it
    QString path;                          ///< of the logbook in it
    qint64 altered = 0;   ///< rows that are kept although they do not match their checksum
    qint64 left = 0;      ///< rows that were left out: changed readings, or without what they need
    bool hasGaps = false; ///< pages could not be read at all, so nobody knows what was on them
};

/// Reads a damaged logbook, table by table and from both ends, and changes nothing in it. A
/// reading, decision or amendment that does not match its checksum is left out; an engine, a spring
/// and the like is kept, for what hangs on it. Fails if not even its tables can be told.
[[nodiscard]] Result<Salvaged> salvage(const QString& path);

} // namespace coilbook
