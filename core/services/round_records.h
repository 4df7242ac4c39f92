#pragma once

#include "core/domain/changes.h"
#include "core/services/round.h"
#include "core/support/result.h"

#include <QString>

namespace coilbook {

/// A hit as somebody committed it at a stop.
struct RoundEntry {
    QString text; ///< as typed
    ForceUnit unit = ForceUnit::PoundForce;
    bool retest = false;
    QString springLabel; ///< used where no spring is known at the stop

    bool operator==(const RoundEntry&) const = default;
};

/// The change that records it, with fresh ids; keep it to repeat a save that failed. A spring that
/// is not known yet is made with it. NotAReading, ReadingOutOfBounds, or EmptyName.
[[nodiscard]] Result<RecordReadings> recordOf(const Round& round, std::size_t stop,
                                              const RoundEntry& entry, const SittingId& sitting,
                                              const Moment& at);

/// Corrects the value of one hit. NotAReading, ReadingOutOfBounds, NothingToAmend (the same digits)
/// or WhyMissing. The text is read in the unit of the hit.
[[nodiscard]] Result<AmendReading> correctionOf(const EngineLog& log, const RoundHit& hit,
                                                const QString& text, const Authorship& author);

/// Takes one hit back for good; it stays in the logbook. WhyMissing.
[[nodiscard]] Result<AmendReading> withdrawalOf(const EngineLog& log, const RoundHit& hit,
                                                const Authorship& author);

} // namespace coilbook
