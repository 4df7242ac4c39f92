#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"

namespace coilbook::storage {

// The calendar, and the springs that stand in no place.

Result<void> ChangeApplier::operator()(const AddPlannedRace& change) const {
    const Result<bool> there = isStored(change.race);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkPlannedRace(change.race).and_then([&] {
        return insert(m_connection, change.race);
    });
}

Result<void> ChangeApplier::operator()(const AmendPlannedRace& change) const {
    const Result<PlannedRace> before = asStored<PlannedRace>(change.race.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->engine != change.race.engine) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkPlannedRace(change.race).and_then([&] {
        return amendTo(*before, change.race, change.author);
    });
}

Result<void> ChangeApplier::checkFacts(const Shelving& shelving) const {
    return checkDay(shelving.shelvedOn, m_clock.today()).and_then([&] {
        return checkShelving(shelving);
    });
}

Result<void> ChangeApplier::operator()(const ShelveSpring& change) const {
    const Result<bool> there = isStored(change.shelving);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    Result<void> done = checkFacts(change.shelving);
    if (change.newSpring) {
        done = done.and_then(
                       [&] { return checkName(change.newSpring->label, QStringLiteral("spring")); })
                   .and_then([&] { return insert(m_connection, *change.newSpring); });
    }
    return done.and_then([&] { return insert(m_connection, change.shelving); }).and_then([&] {
        return checkLabels(change.shelving.engine);
    });
}

Result<void> ChangeApplier::operator()(const AmendShelving& change) const {
    const Result<Shelving> before = asStored<Shelving>(change.shelving.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->engine != change.shelving.engine || before->spring != change.shelving.spring) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkFacts(change.shelving).and_then([&] {
        return amendTo(*before, change.shelving, change.author);
    });
}

} // namespace coilbook::storage
