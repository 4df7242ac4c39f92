#pragma once

#include "core/assessment/assessment.h"
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

/// `Cylinder 3 exhaust`, `intake`, …
[[nodiscard]] QString place(const Place& place);
[[nodiscard]] QString valve(Valve valve);

/// One plain sentence in the words of the trade, with what to do.
[[nodiscard]] QString reason(const Reason& reason, const SpringAssessment& spring,
                             const Assessment& assessment, const Quantities& quantities);

/// The usual cautions around springs, keepers, a turned crank and a hot engine.
[[nodiscard]] QStringList cautions();

} // namespace coilbook::wording
