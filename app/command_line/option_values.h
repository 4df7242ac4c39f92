#pragma once

#include "app/command_line/command.h"
#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"
#include "core/support/result.h"

#include <QDate>

#include <optional>
#include <vector>

namespace coilbook {

/// What the options about a day and about the rules of judging ask for; empty: as in the logbook.
struct JudgingRequest {
    std::optional<QDate> asOf;
    std::optional<Force> limit;
    std::optional<int> racesAhead;

    /// An engine's own rules with what was asked for in their place.
    [[nodiscard]] JudgingRules applied(JudgingRules rules) const;
};

[[nodiscard]] Option engineOption(bool isNeeded);
[[nodiscard]] Option asOfOption();
[[nodiscard]] Option limitOption();
[[nodiscard]] Option aheadOption();

/// Reads the options above, as far as they are given.
[[nodiscard]] Outcome<JudgingRequest> judgingRequestOf(const Request& request);

/// The engine of that name; LogbookFault::UnknownEngine names those there are.
[[nodiscard]] Result<EngineSummary>
engineNamed(const QString& name, const std::vector<EngineSummary>& engines, const QString& file);

} // namespace coilbook
