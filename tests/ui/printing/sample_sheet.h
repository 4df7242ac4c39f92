#pragma once

#include "core/services/sheet_content.h"
#include "core/services/sheet_content_form.h"

namespace coilbook::testing {

/// A filled sheet of an invented engine; every standing, flag and mark occurs in it.
[[nodiscard]] SheetContent sampleSheet(const EngineLayout& layout = defaultLayout());

/// Texts as long as a shop can make them, and forty amendments.
[[nodiscard]] SheetContent overlongSheet();

[[nodiscard]] RoundFormContent sampleForm(const EngineLayout& layout = defaultLayout());

/// `banks` rows of `cylindersPerBank` cylinders, numbered bank by bank.
[[nodiscard]] EngineLayout layoutWith(int banks, int cylindersPerBank);

} // namespace coilbook::testing
