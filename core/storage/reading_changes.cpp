#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"
#include "core/storage/engine_log_reader.h"
#include "core/storage/row_values.h"

#include <map>

namespace coilbook::storage {

namespace {

Result<std::optional<Reading>> findReading(const Connection& connection, const SittingId& sitting,
                                           const ReadingId& id) {
    return select<Reading>(connection, QStringLiteral("WHERE r.sitting_id = ? AND r.id = ?"),
                           {sitting.text(), id.text()})
        .map([](const std::vector<Reading>& found) {
            return found.empty() ? std::nullopt : std::optional<Reading>(found.front());
        });
}

/// Whether a correction says the same as the row that it amends.
bool changesNothing(const Reading& correction, const Reading& amended) {
    return correction.kind == ReadingKind::Correction && amended.kind != ReadingKind::Withdrawal &&
           correction.spring == amended.spring && correction.place == amended.place &&
           correction.hit == amended.hit && correction.retest == amended.retest &&
           correction.value == amended.value && correction.note == amended.note;
}

} // namespace

Result<Inspection> ChangeApplier::inspectionOf(const SittingId& sitting) const {
    Result<std::vector<Inspection>> found = select<Inspection>(
        m_connection,
        QStringLiteral("WHERE r.id ="
                       " (SELECT s.inspection_id FROM sitting s WHERE s.id = ?)"),
        {sitting.text()});
    if (!found) {
        return tl::unexpected(found.error());
    }
    if (found->empty()) {
        return fail(StorageFault::Conflict, {QStringLiteral("reading.sitting_id")},
                    m_connection.path());
    }
    return found->front();
}

Result<EngineLog> ChangeApplier::logOf(const Inspection& inspection) const {
    return readInspectionLog(m_connection, inspection);
}

Result<void> ChangeApplier::checkStoredHits(const Inspection& inspection) const {
    return logOf(inspection).and_then([](const EngineLog& log) { return checkHits(log); });
}

Result<void> ChangeApplier::addReadings(const std::vector<Reading>& readings) const {
    std::map<SittingId, Inspection> inspections;
    std::map<EngineId, Engine> engines;
    for (const Reading& reading : readings) {
        if (inspections.contains(reading.sitting)) {
            continue;
        }
        const Result<Inspection> inspection = inspectionOf(reading.sitting);
        if (!inspection) {
            return tl::unexpected(inspection.error());
        }
        Result<Engine> engine = asStored<Engine>(inspection->engine);
        if (!engine) {
            return tl::unexpected(engine.error());
        }
        inspections.emplace(reading.sitting, *inspection);
        engines.emplace(engine->id, std::move(*engine));
    }
    for (const Reading& reading : readings) {
        const Engine& engine = engines.at(inspections.at(reading.sitting).engine);
        Result<void> done = checkReading(reading, engine.layout).and_then([&] {
            return insert(m_connection, reading);
        });
        if (!done) {
            return done;
        }
    }
    for (const auto& [sitting, inspection] : inspections) {
        if (Result<void> fits = checkStoredHits(inspection); !fits) {
            return fits;
        }
    }
    for (const auto& [id, engine] : engines) {
        if (Result<void> fits = checkLabels(id); !fits) {
            return fits;
        }
    }
    return {};
}

Result<void> ChangeApplier::operator()(const RecordReadings& change) const {
    for (const Spring& spring : change.newSprings) {
        Result<void> done = checkName(spring.label, QStringLiteral("spring")).and_then([&] {
            return insert(m_connection, spring);
        });
        if (!done) {
            return done;
        }
    }
    for (const Reading& reading : change.readings) {
        if (reading.kind != ReadingKind::Original) {
            return fail(LogbookFault::NothingToAmend);
        }
    }
    // What was being typed there is what is saved now; were it kept, it would come back after a
    // power cut and be saved once more.
    for (const Reading& reading : change.readings) {
        Result<void> cleared = m_connection.run(
            QStringLiteral(
                "UPDATE draft SET typed = '' WHERE cylinder = ? AND valve = ? AND"
                " inspection_id = (SELECT s.inspection_id FROM sitting s WHERE s.id = ?)"),
            {stored(reading.place.cylinder.number()), stored(reading.place.valve),
             stored(reading.sitting)});
        if (!cleared) {
            return cleared;
        }
    }
    return addReadings(change.readings);
}

Result<void> ChangeApplier::operator()(const AmendReading& change) const {
    const Reading& amendment = change.reading;
    if (amendment.kind == ReadingKind::Original || !amendment.amends) {
        return fail(LogbookFault::NothingToAmend);
    }
    if (amendment.author.why.trimmed().isEmpty()) {
        return fail(LogbookFault::WhyMissing);
    }
    const Result<std::optional<Reading>> amended =
        findReading(m_connection, amendment.sitting, *amendment.amends);
    if (!amended) {
        return tl::unexpected(amended.error());
    }
    if (!*amended || changesNothing(amendment, **amended)) {
        return fail(LogbookFault::NothingToAmend);
    }
    return addReadings({amendment});
}

} // namespace coilbook::storage
