#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"

namespace coilbook::storage {

Result<void> ChangeApplier::operator()(const DecideReading& change) const {
    Decision decision = change.decision;
    const Result<bool> there = isStored(decision);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    if (decision.author.at.utc.isEmpty()) {
        decision.author.at = m_clock.now();
    }
    return asStored<Inspection>(decision.inspection)
        .and_then([&](const Inspection& inspection) { return logOf(inspection); })
        .and_then([&](const EngineLog& log) { return checkDecision(decision, log); })
        .and_then([&] { return insert(m_connection, decision); });
}

} // namespace coilbook::storage
