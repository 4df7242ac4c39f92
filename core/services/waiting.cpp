#include "core/services/waiting.h"

#include "core/domain/log_rules.h"
#include "core/exchange/observation_export.h"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace coilbook {

namespace {

/// Replaces the record of that id, or adds it.
template <class Record>
void put(std::vector<Record>& records, const Record& record) {
    const auto there = std::find_if(records.begin(), records.end(),
                                    [&](const Record& other) { return other.id == record.id; });
    if (there != records.end()) {
        *there = record;
    } else {
        records.push_back(record);
    }
}

template <class Record>
void put(std::vector<Record>& records, const std::optional<Record>& record) {
    if (record) {
        put(records, *record);
    }
}

template <class Record>
void put(std::vector<Record>& records, const std::vector<Record>& more) {
    for (const Record& record : more) {
        put(records, record);
    }
}

/// Puts one change into a log, by the engine that it belongs to.
class LogWriter {
public:
    explicit LogWriter(EngineLog& log)
        : m_log(log) {}

    void operator()(const AddEngine& change) const { (void)change; } // a log of its own

    void operator()(const AmendEngine& change) const {
        if (change.engine.id == m_log.engine.id) {
            m_log.engine = change.engine;
        }
    }

    void operator()(const AddRace& change) const { putOwn(m_log.races, change.race); }

    void operator()(const AmendRace& change) const { putOwn(m_log.races, change.race); }

    void operator()(const StartInspection& change) const {
        if (putOwn(m_log.inspections, change.inspection)) {
            put(m_log.sittings, change.sitting);
        }
    }

    void operator()(const StartSitting& change) const { putSitting(change.sitting); }

    void operator()(const AmendInspection& change) const {
        putOwn(m_log.inspections, change.inspection);
    }

    void operator()(const AmendSitting& change) const { putSitting(change.sitting); }

    void operator()(const RecordReadings& change) const {
        if (putReadings(change.readings)) {
            put(m_log.springs, change.newSprings);
        }
    }

    void operator()(const AmendReading& change) const { putReadings({change.reading}); }

    void operator()(const FitSpring& change) const {
        if (!putOwn(m_log.fittings, change.fitting)) {
            return;
        }
        put(m_log.springs, change.newSpring);
        put(m_log.inspections, change.newInspection);
        put(m_log.sittings, change.newSitting);
        put(m_log.readings, change.baseline);
        put(m_log.shelvings, change.outgoing);
    }

    void operator()(const WithdrawFitting& change) const {
        for (Fitting& fitting : m_log.fittings) {
            if (fitting.id == change.fitting) {
                fitting.withdrawn = change.withdrawn;
            }
        }
    }

    void operator()(const AmendSpring& change) const {
        if (knows(m_log.springs, change.spring.id)) {
            put(m_log.springs, change.spring);
        }
    }

    void operator()(const DecideReading& change) const {
        if (knows(m_log.inspections, change.decision.inspection)) {
            put(m_log.decisions, change.decision);
        }
    }

    void operator()(const AddRunning& change) const { putOwn(m_log.running, change.running); }

    void operator()(const AmendRunning& change) const { putOwn(m_log.running, change.running); }

    void operator()(const AddLevelChange& change) const {
        putOwn(m_log.levelChanges, change.change);
    }

    void operator()(const AmendLevelChange& change) const {
        putOwn(m_log.levelChanges, change.change);
    }

    void operator()(const AddPlannedRace& change) const { putOwn(m_log.plannedRaces, change.race); }

    void operator()(const AmendPlannedRace& change) const {
        putOwn(m_log.plannedRaces, change.race);
    }

    void operator()(const ShelveSpring& change) const {
        if (putOwn(m_log.shelvings, change.shelving)) {
            put(m_log.springs, change.newSpring);
        }
    }

    void operator()(const AmendShelving& change) const { putOwn(m_log.shelvings, change.shelving); }

    void operator()(const AddTester& change) const { put(m_log.testers, change.tester); }

    void operator()(const AmendTester& change) const { put(m_log.testers, change.tester); }

    void operator()(const AddCalibration& change) const {
        put(m_log.calibrations, change.calibration);
    }

    void operator()(const AmendCalibration& change) const {
        put(m_log.calibrations, change.calibration);
    }

    void operator()(const AddStudy& change) const { put(m_log.studies, change.study); }

    void operator()(const AmendStudy& change) const { put(m_log.studies, change.study); }

private:
    template <class Record, class SomeId>
    static bool knows(const std::vector<Record>& records, const SomeId& id) {
        return std::any_of(records.begin(), records.end(),
                           [&](const Record& record) { return record.id == id; });
    }

    template <class Record>
    bool putOwn(std::vector<Record>& records, const Record& record) const {
        if (record.engine != m_log.engine.id) {
            return false;
        }
        put(records, record);
        return true;
    }

    void putSitting(const Sitting& sitting) const {
        if (knows(m_log.inspections, sitting.inspection)) {
            put(m_log.sittings, sitting);
        }
    }

    bool putReadings(const std::vector<Reading>& readings) const {
        if (readings.empty() || !knows(m_log.sittings, readings.front().sitting)) {
            return false;
        }
        put(m_log.readings, readings);
        return true;
    }

    EngineLog& m_log;
};

/// The orders that EngineLog promises.
void sort(EngineLog& log) {
    std::sort(log.races.begin(), log.races.end(),
              [](const Race& a, const Race& b) { return a.number < b.number; });
    std::sort(log.inspections.begin(), log.inspections.end(),
              [](const Inspection& a, const Inspection& b) {
                  return std::tie(a.inspectedOn, a.engineRaces) <
                         std::tie(b.inspectedOn, b.engineRaces);
              });
    const auto byId = [](const auto& a, const auto& b) {
        return a.id < b.id;
    };
    std::sort(log.sittings.begin(), log.sittings.end(), byId);
    std::sort(log.readings.begin(), log.readings.end(), byId);
    std::sort(log.springs.begin(), log.springs.end(), byId);
    std::sort(log.fittings.begin(), log.fittings.end(), byId);
    std::sort(log.shelvings.begin(), log.shelvings.end(), byId);
    std::sort(log.plannedRaces.begin(), log.plannedRaces.end(),
              [](const PlannedRace& a, const PlannedRace& b) {
                  return std::tie(a.plannedOn, a.id) < std::tie(b.plannedOn, b.id);
              });
    std::sort(log.decisions.begin(), log.decisions.end(), byId);
    std::sort(log.calibrations.begin(), log.calibrations.end(),
              [](const Calibration& a, const Calibration& b) {
                  return std::tie(a.calibratedOn, a.id) < std::tie(b.calibratedOn, b.id);
              });
    std::sort(log.studies.begin(), log.studies.end(),
              [](const RepeatabilityStudy& a, const RepeatabilityStudy& b) {
                  return std::tie(a.studiedOn, a.id) < std::tie(b.studiedOn, b.id);
              });
    std::sort(log.running.begin(), log.running.end(), [](const Running& a, const Running& b) {
        return std::tie(a.ranOn, a.engineRaces, a.id) < std::tie(b.ranOn, b.engineRaces, b.id);
    });
    std::sort(log.levelChanges.begin(), log.levelChanges.end(),
              [](const LevelChange& a, const LevelChange& b) {
                  return std::tie(a.changedOn, a.engineRaces, a.id) <
                         std::tie(b.changedOn, b.engineRaces, b.id);
              });
}

const std::vector<Reading>* newReadings(const Change& change) {
    if (const auto* record = std::get_if<RecordReadings>(&change)) {
        return &record->readings;
    }
    if (const auto* swap = std::get_if<FitSpring>(&change)) {
        return &swap->baseline;
    }
    return nullptr;
}

std::optional<QDate> dayOf(const Change& change) {
    if (const auto* start = std::get_if<StartInspection>(&change)) {
        return start->inspection.inspectedOn;
    }
    if (const auto* race = std::get_if<AddRace>(&change)) {
        return race->race.racedOn;
    }
    if (const auto* swap = std::get_if<FitSpring>(&change)) {
        return swap->fitting.fittedOn;
    }
    return std::nullopt;
}

} // namespace

bool mayWait(const Error& error) {
    const auto* fault = std::get_if<StorageFault>(&error.fault);
    if (fault == nullptr) {
        return false;
    }
    switch (*fault) {
    case StorageFault::Missing:
    case StorageFault::Damaged:
    case StorageFault::NotALogbook: // its first page does not answer as it did
    case StorageFault::ReadOnly:
    case StorageFault::NoPermission:
    case StorageFault::Locked:
    case StorageFault::HeldByWindow:
    case StorageFault::DiskFull:
    case StorageFault::Vanished:
    case StorageFault::NeedsRecovery:
    case StorageFault::InputOutput:
        return true;
    case StorageFault::AlreadyExists:
    case StorageFault::NewerVersion:
    case StorageFault::Unsound:
    case StorageFault::Conflict:
    case StorageFault::CannotWriteOutput:
    case StorageFault::Internal:
        return false;
    }
    return false;
}

EngineLog withChanges(EngineLog log, const std::vector<Change>& changes) {
    for (const Change& change : changes) {
        std::visit(LogWriter(log), change);
    }
    sort(log);
    return log;
}

Result<void> checkWaiting(const EngineLog& log, const std::vector<Change>& changes,
                          const QDate& today) {
    for (const Change& change : changes) {
        if (const std::optional<QDate> day = dayOf(change)) {
            if (Result<void> fits = checkDay(*day, today); !fits) {
                return fits;
            }
        }
        if (const std::vector<Reading>* readings = newReadings(change)) {
            for (const Reading& reading : *readings) {
                if (Result<void> fits = checkReading(reading, log.engine.layout); !fits) {
                    return fits;
                }
            }
        }
        if (const auto* amended = std::get_if<AmendReading>(&change)) {
            if (amended->reading.author.why.trimmed().isEmpty()) {
                return fail(LogbookFault::WhyMissing);
            }
            if (Result<void> fits = checkReading(amended->reading, log.engine.layout); !fits) {
                return fits;
            }
        }
    }
    return checkEngine(log.engine)
        .and_then([&] { return checkTimeline(log.inspections, log.races); })
        .and_then([&] { return checkMoments(log); })
        .and_then([&] { return checkSprings(log.springs); })
        .and_then([&] { return checkHits(log); });
}

void count(const std::vector<Change>& changes, Waiting& waiting) {
    for (const Change& change : changes) {
        const std::vector<Reading>* readings = newReadings(change);
        if (readings != nullptr) {
            waiting.readings += static_cast<int>(readings->size());
            for (const Reading& reading : *readings) {
                waiting.ids.insert(reading.id);
            }
        }
        if (const auto* amended = std::get_if<AmendReading>(&change)) {
            waiting.ids.insert(amended->reading.id);
        }
        waiting.others += std::holds_alternative<RecordReadings>(change) ? 0 : 1;
    }
}

QString readingsAsRows(const EngineLog& log, const std::vector<Change>& changes) {
    EngineLog told = log;
    told.readings.clear();
    for (const Change& change : changes) {
        if (const std::vector<Reading>* readings = newReadings(change)) {
            std::copy(readings->begin(), readings->end(), std::back_inserter(told.readings));
        }
    }
    if (told.readings.empty()) {
        return {};
    }
    QByteArray text;
    CsvWriter csv([&text](QByteArrayView piece) { text += piece; });
    writeReadings(csv, told);
    return QString::fromUtf8(text);
}

} // namespace coilbook
