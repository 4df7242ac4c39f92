#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"
#include "core/storage/engine_log_reader.h"

namespace coilbook::storage {

// Running that is no race, and level changes.

Result<void> ChangeApplier::checkStoredMoments(const EngineId& engine) const {
    return readOutline(m_connection, engine).and_then([](const EngineLog& log) {
        return checkMoments(log);
    });
}

Result<void> ChangeApplier::operator()(const AddRunning& change) const {
    const Running& running = change.running;
    const Result<bool> there = isStored(running);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkDay(running.ranOn, m_clock.today())
        .and_then([&] { return checkRunning(running); })
        .and_then([&] { return insert(m_connection, running); })
        .and_then([&] { return checkStoredMoments(running.engine); });
}

Result<void> ChangeApplier::operator()(const AmendRunning& change) const {
    const Running& running = change.running;
    const Result<Running> before = asStored<Running>(running.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->engine != running.engine) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkDay(running.ranOn, m_clock.today())
        .and_then([&] { return checkRunning(running); })
        .and_then([&] { return amendTo(*before, running, change.author); })
        .and_then([&] { return checkStoredMoments(running.engine); });
}

Result<void> ChangeApplier::checkFacts(const LevelChange& change) const {
    const Result<std::vector<Spring>> springs = readSprings(m_connection, change.engine);
    if (!springs) {
        return tl::unexpected(springs.error());
    }
    return checkDay(change.changedOn, m_clock.today()).and_then([&] {
        return checkLevelChange(change, *springs);
    });
}

Result<void> ChangeApplier::operator()(const AddLevelChange& change) const {
    const Result<bool> there = isStored(change.change);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkFacts(change.change)
        .and_then([&] { return insert(m_connection, change.change); })
        .and_then([&] { return checkStoredMoments(change.change.engine); });
}

Result<void> ChangeApplier::operator()(const AmendLevelChange& change) const {
    const Result<LevelChange> before = asStored<LevelChange>(change.change.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->engine != change.change.engine) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkFacts(change.change)
        .and_then([&] { return amendTo(*before, change.change, change.author); })
        .and_then([&] { return checkStoredMoments(change.change.engine); });
}

} // namespace coilbook::storage
