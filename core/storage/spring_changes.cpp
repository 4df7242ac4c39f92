#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"
#include "core/storage/engine_log_reader.h"

namespace coilbook::storage {

Result<void> ChangeApplier::checkFitting(const Fitting& fitting, const EngineLayout& layout) const {
    if (!layout.has(fitting.place)) {
        return fail(LogbookFault::NoSuchPlace, {placeText(fitting.place)});
    }
    return checkDay(fitting.fittedOn, m_clock.today());
}

Result<void> ChangeApplier::checkLabels(const EngineId& engine) const {
    const Result<std::vector<Spring>> springs = readSprings(m_connection, engine);
    if (!springs) {
        return tl::unexpected(springs.error());
    }
    return checkSprings(*springs);
}

Result<void> ChangeApplier::operator()(const FitSpring& change) const {
    const Result<bool> there = isStored(change.fitting);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    const Result<Engine> engine = asStored<Engine>(change.fitting.engine);
    if (!engine) {
        return tl::unexpected(engine.error());
    }
    Result<void> done = checkFitting(change.fitting, engine->layout);
    if (change.newSpring) {
        done = done.and_then(
                       [&] { return checkName(change.newSpring->label, QStringLiteral("spring")); })
                   .and_then([&] { return insert(m_connection, *change.newSpring); });
    }
    if (change.newInspection) {
        done = done.and_then([&] { return addInspection(*change.newInspection); });
    }
    if (change.newSitting) {
        done = done.and_then([&] { return insert(m_connection, *change.newSitting); });
    }
    if (change.outgoing) {
        done = done.and_then([&] { return checkFacts(*change.outgoing); }).and_then([&] {
            return insert(m_connection, *change.outgoing);
        });
    }
    return done.and_then([&] { return insert(m_connection, change.fitting); })
        .and_then([&] { return addReadings(change.baseline); })
        .and_then([&] { return checkLabels(change.fitting.engine); });
}

Result<void> ChangeApplier::operator()(const WithdrawFitting& change) const {
    const Result<Fitting> before = asStored<Fitting>(change.fitting);
    if (!before) {
        return tl::unexpected(before.error());
    }
    Fitting after = *before;
    after.withdrawn = change.withdrawn;
    return amendTo(*before, after, change.author);
}

Result<void> ChangeApplier::operator()(const AmendSpring& change) const {
    const Result<Spring> before = asStored<Spring>(change.spring.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    Result<void> done = checkName(change.spring.label, QStringLiteral("spring")).and_then([&] {
        return amendTo(*before, change.spring, change.author);
    });
    if (!done || before->label == change.spring.label) {
        return done;
    }
    const Result<std::vector<EngineId>> engines = readEnginesOf(m_connection, change.spring.id);
    if (!engines) {
        return tl::unexpected(engines.error());
    }
    for (const EngineId& engine : *engines) {
        if (Result<void> fits = checkLabels(engine); !fits) {
            return fits;
        }
    }
    return {};
}

} // namespace coilbook::storage
