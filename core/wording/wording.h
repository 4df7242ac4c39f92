#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/live_assessment.h"
#include "core/support/error.h"
#include "core/wording/quantities.h"

#include <QString>

namespace coilbook::wording {

/// The one sentence for a failure: what happened, what is safe, what to do. Without the position;
/// text from files in it is escaped (support/text.h: shown()).
[[nodiscard]] QString sentence(const Error& error);

/// As the command line prints it, without the leading `coilbook: `: file, line and column where
/// there are such, then the sentence, then `(and N more)`.
[[nodiscard]] QString line(const Error& error);

/// `past the limit`, `due within 3 races`, `sound`, `no trend yet`.
[[nodiscard]] QString standing(Standing standing, int racesAhead);

/// The standing with its flags: `past the limit, off its trend`, `sound, provisional`.
[[nodiscard]] QString standing(const SpringAssessment& spring, int racesAhead);

/// `Cylinder 3 exhaust`, `intake`, …
[[nodiscard]] QString place(const Place& place);
[[nodiscard]] QString valve(Valve valve);

/// One plain sentence in the words of the trade, with what to do.
[[nodiscard]] QString reason(const Reason& reason, const SpringAssessment& spring,
                             const Assessment& assessment, const Quantities& quantities);

/// An estimated loss as it is told: a spring does not gain, so what lies below 0 is told as 0.
[[nodiscard]] ForceEstimate toldLoss(const ForceEstimate& loss);

/// `3.1 (2.2 to 4.0)`: an estimated loss and what it is likely between, without the unit.
[[nodiscard]] QString lossWithRange(const ForceEstimate& loss, const Quantities& quantities);

/// What the bench says of the spring at hand beside the measured loss, in one line: `By its
/// trend lost 2.3 (1.1 to 3.4) lbf: sound`. Empty without a trend.
[[nodiscard]] QString liveFigures(const LiveFigures& figures, const JudgingRules& rules,
                                  const Quantities& quantities);

/// That the newest inspection reads low or high on all springs, what to do, and what one inspection
/// cannot tell; empty if it is not flagged.
[[nodiscard]] QString newestShift(const Assessment& assessment, const Quantities& quantities);

/// One sentence for each earlier inspection that is flagged, in order of time.
[[nodiscard]] QStringList earlierShifts(const Assessment& assessment, const Quantities& quantities);

/// The usual cautions around springs, keepers, a turned crank and a hot engine.
[[nodiscard]] QStringList cautions();

} // namespace coilbook::wording
