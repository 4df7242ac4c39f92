#pragma once

#include "core/domain/engine_log.h"

#include <QString>

namespace coilbook::wording {

/// What a fact is called, from the column that an Amendment names: `limit_ulbf` is "limit". A
/// column that is not known here is named with blanks for its underscores.
[[nodiscard]] QString factName(const QString& fact);

/// The value of a fact as people write it, from its stored text: a limit of `5000000` is `5.0 lbf`.
/// `log` names testers. Text that is no value of that fact comes back as it is.
[[nodiscard]] QString factValue(const QString& fact, const QString& stored, const EngineLog& log);

} // namespace coilbook::wording
