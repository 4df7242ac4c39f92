#include "core/storage/engine_log_reader.h"

#include "core/storage/table.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace coilbook::storage {

namespace {

QString sittingsOfEngine(const QString& columns) {
    return QStringLiteral("SELECT %1 FROM inspection i JOIN sitting s ON s.inspection_id = i.id"
                          " WHERE i.engine_id = ?")
        .arg(columns);
}

/// Ids of the springs that have a reading, a fitting or a shelving in an engine (named three
/// times).
QString springsOfEngine() {
    return QStringLiteral("SELECT x.spring_id FROM inspection i"
                          " JOIN sitting s ON s.inspection_id = i.id"
                          " JOIN reading x ON x.sitting_id = s.id WHERE i.engine_id = ?"
                          " UNION SELECT f.spring_id FROM fitting f WHERE f.engine_id = ?"
                          " UNION SELECT h.spring_id FROM shelving h WHERE h.engine_id = ?");
}

/// Moves the records of a query to where they belong, or its failure on.
template <class Record>
Result<void> into(std::vector<Record>& target, Result<std::vector<Record>> found) {
    if (!found) {
        return tl::unexpected(found.error());
    }
    target = std::move(*found);
    return {};
}

/// Ids in one statement; SQLite allows 32766, PostgreSQL more.
constexpr qsizetype kIdsAtOnce = 500;

/// The records whose `column` is one of the ids, by their own id.
template <class Record>
Result<std::vector<Record>> selectAmong(const Connection& connection, const QString& column,
                                        const QStringList& ids) {
    std::vector<Record> records;
    for (qsizetype first = 0; first < ids.size(); first += kIdsAtOnce) {
        QVariantList values;
        QStringList marks;
        for (const QString& id : ids.mid(first, kIdsAtOnce)) {
            values.append(id);
            marks.append(QStringLiteral("?"));
        }
        Result<std::vector<Record>> found = select<Record>(
            connection,
            QStringLiteral("WHERE r.%1 IN (%2)").arg(column, marks.join(QLatin1Char(','))), values);
        if (!found) {
            return found;
        }
        std::move(found->begin(), found->end(), std::back_inserter(records));
    }
    std::sort(records.begin(), records.end(),
              [](const Record& a, const Record& b) { return a.id < b.id; });
    return records;
}

template <class Record>
void appendIds(QStringList& ids, const std::vector<Record>& records) {
    for (const Record& record : records) {
        ids.append(record.id.text());
    }
}

Result<void> readLogSprings(const Connection& connection, EngineLog& log) {
    std::set<SpringId> springs;
    for (const Reading& reading : log.readings) {
        springs.insert(reading.spring);
    }
    for (const Fitting& fitting : log.fittings) {
        springs.insert(fitting.spring);
    }
    for (const Shelving& shelving : log.shelvings) {
        springs.insert(shelving.spring);
    }
    QStringList ids;
    for (const SpringId& spring : springs) {
        ids.append(spring.text());
    }
    return into(log.springs, selectAmong<Spring>(connection, QStringLiteral("id"), ids));
}

Result<void> readLogAmendments(const Connection& connection, EngineLog& log) {
    QStringList ids{log.engine.id.text()};
    appendIds(ids, log.races);
    appendIds(ids, log.inspections);
    appendIds(ids, log.sittings);
    appendIds(ids, log.springs);
    appendIds(ids, log.fittings);
    appendIds(ids, log.running);
    appendIds(ids, log.levelChanges);
    appendIds(ids, log.plannedRaces);
    appendIds(ids, log.shelvings);
    appendIds(ids, log.testers);
    appendIds(ids, log.calibrations);
    appendIds(ids, log.studies);
    return into(log.amendments,
                selectAmong<Amendment>(connection, QStringLiteral("record_id"), ids));
}

Result<void> readSittings(const Connection& connection, EngineLog& log, const QString& engine) {
    const QString inSittings = QStringLiteral("WHERE r.id IN (%1) ORDER BY r.id")
                                   .arg(sittingsOfEngine(QStringLiteral("s.id")));
    return into(log.sittings, select<Sitting>(connection, inSittings, {engine}));
}

} // namespace

Result<std::vector<EngineSummary>> readEngines(const Connection& connection) {
    const QString sql =
        QStringLiteral("SELECT e.id, e.name, e.serial, e.retired,"
                       " (SELECT count(*) FROM inspection i WHERE i.engine_id = e.id),"
                       " (SELECT max(i.inspected_on) FROM inspection i WHERE i.engine_id = e.id),"
                       " (SELECT max(r.raced_on) FROM race r WHERE r.engine_id = e.id)"
                       " FROM engine e ORDER BY e.name");
    std::vector<EngineSummary> engines;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        EngineSummary engine;
        engine.id = EngineId::fromText(query.value(0).toString());
        engine.name = query.value(1).toString();
        engine.serial = query.value(2).toString();
        engine.retired = query.value(3).toLongLong() != 0;
        engine.inspections = static_cast<int>(query.value(4).toLongLong());
        // ISO dates sort as text; an absent one is empty.
        const QString newest = std::max(query.value(5).toString(), query.value(6).toString());
        engine.newestDay = QDate::fromString(newest, Qt::ISODate);
        engines.push_back(std::move(engine));
        return {};
    };
    if (Result<void> read = connection.forEachRow(sql, {}, onRow); !read) {
        return tl::unexpected(read.error());
    }
    return engines;
}

Result<std::vector<Tester>> readTesters(const Connection& connection) {
    return select<Tester>(connection, QStringLiteral("ORDER BY r.name"));
}

Result<std::vector<Calibration>> readCalibrations(const Connection& connection) {
    return select<Calibration>(connection, QStringLiteral("ORDER BY r.calibrated_on, r.id"));
}

Result<std::vector<RepeatabilityStudy>> readStudies(const Connection& connection) {
    return select<RepeatabilityStudy>(connection, QStringLiteral("ORDER BY r.studied_on, r.id"));
}

Result<EngineLog> readOutline(const Connection& connection, const EngineId& engine) {
    Result<std::optional<Engine>> found = find<Engine>(connection, engine);
    if (!found) {
        return tl::unexpected(found.error());
    }
    if (!*found) {
        return fail(LogbookFault::UnknownEngine, {engine.text()}, connection.path());
    }
    EngineLog log;
    log.engine = std::move(**found);
    const QString id = engine.text();
    const QString ofEngine = QStringLiteral("WHERE r.engine_id = ? ORDER BY ");
    Result<void> read =
        into(log.races, select<Race>(connection, ofEngine + QStringLiteral("r.number"), {id}));
    read = read.and_then([&] {
        return into(log.inspections,
                    select<Inspection>(connection,
                                       ofEngine + QStringLiteral("r.inspected_on, r.engine_races"),
                                       {id}));
    });
    read = read.and_then([&] { return readSittings(connection, log, id); });
    read = read.and_then([&] {
        return into(log.fittings,
                    select<Fitting>(connection, ofEngine + QStringLiteral("r.id"), {id}));
    });
    read = read.and_then([&] {
        return into(log.running,
                    select<Running>(connection,
                                    ofEngine + QStringLiteral("r.ran_on, r.engine_races, r.id"),
                                    {id}));
    });
    read = read.and_then([&] {
        return into(
            log.levelChanges,
            select<LevelChange>(
                connection, ofEngine + QStringLiteral("r.changed_on, r.engine_races, r.id"), {id}));
    });
    read = read.and_then([&] {
        return into(
            log.plannedRaces,
            select<PlannedRace>(connection, ofEngine + QStringLiteral("r.planned_on, r.id"), {id}));
    });
    read = read.and_then([&] {
        return into(log.shelvings,
                    select<Shelving>(connection, ofEngine + QStringLiteral("r.id"), {id}));
    });
    read = read.and_then([&] { return into(log.testers, readTesters(connection)); });
    read = read.and_then([&] { return into(log.calibrations, readCalibrations(connection)); });
    read = read.and_then([&] { return into(log.studies, readStudies(connection)); });
    if (!read) {
        return tl::unexpected(read.error());
    }
    return log;
}

Result<std::vector<Spring>> readSprings(const Connection& connection, const EngineId& engine) {
    return select<Spring>(connection,
                          QStringLiteral("WHERE r.id IN (%1) ORDER BY r.id").arg(springsOfEngine()),
                          {engine.text(), engine.text(), engine.text()});
}

Result<std::vector<EngineId>> readEnginesOf(const Connection& connection, const SpringId& spring) {
    const QString sql =
        QStringLiteral("SELECT i.engine_id FROM reading r JOIN sitting s ON s.id = r.sitting_id"
                       " JOIN inspection i ON i.id = s.inspection_id WHERE r.spring_id = ?"
                       " UNION SELECT f.engine_id FROM fitting f WHERE f.spring_id = ?"
                       " UNION SELECT h.engine_id FROM shelving h WHERE h.spring_id = ?");
    std::vector<EngineId> engines;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        engines.push_back(EngineId::fromText(query.value(0).toString()));
        return {};
    };
    if (Result<void> read =
            connection.forEachRow(sql, {spring.text(), spring.text(), spring.text()}, onRow);
        !read) {
        return tl::unexpected(read.error());
    }
    return engines;
}

Result<std::vector<Reading>> readReadings(const Connection& connection,
                                          const InspectionId& inspection) {
    return select<Reading>(connection,
                           QStringLiteral("WHERE r.sitting_id IN (SELECT s.id FROM sitting s"
                                          " WHERE s.inspection_id = ?) ORDER BY r.id"),
                           {inspection.text()});
}

Result<EngineLog> readInspectionLog(const Connection& connection, const Inspection& inspection) {
    EngineLog log;
    log.inspections = {inspection};
    const QString id = inspection.id.text();
    Result<std::vector<Sitting>> sittings =
        select<Sitting>(connection, QStringLiteral("WHERE r.inspection_id = ?"), {id});
    if (!sittings) {
        return tl::unexpected(sittings.error());
    }
    Result<std::vector<Reading>> readings = readReadings(connection, inspection.id);
    if (!readings) {
        return tl::unexpected(readings.error());
    }
    Result<std::vector<Spring>> springs = select<Spring>(
        connection,
        QStringLiteral("WHERE r.id IN (SELECT x.spring_id FROM sitting s"
                       " JOIN reading x ON x.sitting_id = s.id WHERE s.inspection_id = ?)"),
        {id});
    if (!springs) {
        return tl::unexpected(springs.error());
    }
    log.sittings = std::move(*sittings);
    log.readings = std::move(*readings);
    log.springs = std::move(*springs);
    return log;
}

Result<EngineLog> readEngineLog(const Connection& connection, const EngineId& engine) {
    Result<EngineLog> log = readOutline(connection, engine);
    if (!log) {
        return log;
    }
    const QString inSittings = QStringLiteral("WHERE r.sitting_id IN (%1) ORDER BY r.id")
                                   .arg(sittingsOfEngine(QStringLiteral("s.id")));
    Result<void> read =
        into(log->readings, select<Reading>(connection, inSittings, {engine.text()}));
    read = read.and_then([&] {
        return into(log->decisions,
                    select<Decision>(connection,
                                     QStringLiteral("WHERE r.inspection_id IN (SELECT i.id"
                                                    " FROM inspection i WHERE i.engine_id = ?)"
                                                    " ORDER BY r.id"),
                                     {engine.text()}));
    });
    read = read.and_then([&] { return readLogSprings(connection, *log); }).and_then([&] {
        return readLogAmendments(connection, *log);
    });
    if (!read) {
        return tl::unexpected(read.error());
    }
    return log;
}

} // namespace coilbook::storage
