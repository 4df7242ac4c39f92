#pragma once

#include "core/services/sheet_content.h"

namespace coilbook {

/// A tester as the sheet names it, for an inspection on `day`.
[[nodiscard]] SheetTester sheetTesterOf(const Tester& tester, const EngineLog& log,
                                        const QDate& day, const Quantities& quantities);

/// Overdue calibrations, and what the readings of the newest inspection were corrected by for the
/// trends, a sentence each.
[[nodiscard]] QStringList testerNotesOf(const EngineLog& log, const EngineHistory& history,
                                        const Quantities& quantities);

/// The newest reading of a spring as the trends use it; empty where that is what was read.
[[nodiscard]] QString correctedLatest(const SpringId& spring, const EngineHistory& history,
                                      const Quantities& quantities);

} // namespace coilbook
