#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"
#include "core/storage/engine_log_reader.h"

#include <algorithm>

namespace coilbook::storage {

namespace {

/// The records with this one as it shall be.
template <class Record>
void put(std::vector<Record>& records, const Record& record) {
    const auto there = std::find_if(records.begin(), records.end(), [&](const Record& candidate) {
        return candidate.id == record.id;
    });
    if (there == records.end()) {
        records.push_back(record);
    } else {
        *there = record;
    }
}

} // namespace

Result<void> ChangeApplier::checkRace(const Race& race) const {
    if (Result<void> day = checkDay(race.racedOn, m_clock.today()); !day) {
        return day;
    }
    Result<EngineLog> log = readOutline(m_connection, race.engine);
    if (!log) {
        return tl::unexpected(log.error());
    }
    put(log->races, race);
    return checkTimeline(log->inspections, log->races);
}

Result<void> ChangeApplier::checkInspection(const Inspection& inspection) const {
    if (Result<void> day = checkDay(inspection.inspectedOn, m_clock.today()); !day) {
        return day;
    }
    Result<EngineLog> log = readOutline(m_connection, inspection.engine);
    if (!log) {
        return tl::unexpected(log.error());
    }
    put(log->inspections, inspection);
    return checkTimeline(log->inspections, log->races, inspection.id);
}

Result<void> ChangeApplier::addInspection(const Inspection& inspection) const {
    const Result<bool> there = isStored(inspection);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkInspection(inspection)
        .and_then([&] { return insert(m_connection, inspection); })
        .and_then([&] { return checkStoredMoments(inspection.engine); });
}

Result<void> ChangeApplier::operator()(const AddRace& change) const {
    const Result<bool> there = isStored(change.race);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkRace(change.race).and_then([&] { return insert(m_connection, change.race); });
}

Result<void> ChangeApplier::operator()(const AmendRace& change) const {
    const Result<Race> before = asStored<Race>(change.race.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->engine != change.race.engine) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkRace(change.race).and_then([&] {
        return amendTo(*before, change.race, change.author);
    });
}

Result<void> ChangeApplier::operator()(const StartInspection& change) const {
    return addInspection(change.inspection).and_then([&] {
        return insert(m_connection, change.sitting);
    });
}

Result<void> ChangeApplier::operator()(const StartSitting& change) const {
    return insert(m_connection, change.sitting);
}

Result<void> ChangeApplier::operator()(const AmendInspection& change) const {
    const Result<Inspection> before = asStored<Inspection>(change.inspection.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->engine != change.inspection.engine) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkInspection(change.inspection)
        .and_then([&] { return amendTo(*before, change.inspection, change.author); })
        .and_then([&] { return checkStoredMoments(change.inspection.engine); });
}

Result<void> ChangeApplier::operator()(const AmendSitting& change) const {
    const Result<Sitting> before = asStored<Sitting>(change.sitting.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->inspection != change.sitting.inspection) {
        return fail(LogbookFault::NothingToAmend);
    }
    return amendTo(*before, change.sitting, change.author);
}

} // namespace coilbook::storage
