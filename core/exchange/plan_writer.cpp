#include "core/exchange/plan_writer.h"

#include <algorithm>
#include <numeric>
#include <tuple>
#include <unordered_map>

namespace coilbook {

namespace {

constexpr qint64 kReadingsBetweenReports = 1 << 12;

std::optional<int> givenNumber(std::int32_t number) {
    return number == RaceRow::kNotGiven ? std::nullopt : std::optional<int>(number);
}

/// Indices of `items` in the order of a key.
template <class Item, class Key>
std::vector<std::uint32_t> orderBy(const std::vector<Item>& items, const Key& key) {
    std::vector<std::uint32_t> order(items.size());
    std::iota(order.begin(), order.end(), 0U);
    std::sort(order.begin(), order.end(),
              [&](std::uint32_t a, std::uint32_t b) { return key(items[a]) < key(items[b]); });
    return order;
}

std::vector<std::uint32_t> ranksOf(const std::vector<std::uint32_t>& order) {
    std::vector<std::uint32_t> ranks(order.size());
    for (std::uint32_t rank = 0; rank < order.size(); ++rank) {
        ranks[order[rank]] = rank;
    }
    return ranks;
}

class PlanWriter {
public:
    PlanWriter(LogbookStore::Batch& batch, const ExchangeInput& input, qint64 readingsInAll,
               const Progress& progress)
        : m_batch(batch)
        , m_input(input)
        , m_readingsInAll(std::max<qint64>(readingsInAll, 1))
        , m_progress(progress) {}

    /// Testers first, since they belong to no engine.
    Result<void> addTesters(const std::vector<Tester>& stored,
                            const std::vector<ImportPlan>& plans) {
        for (const Tester& tester : stored) {
            m_testersByName.emplace(tester.name, tester.id);
        }
        std::vector<TextId> names;
        for (const ImportPlan& plan : plans) {
            for (const ImportPlan::Sitting& sitting : plan.sittings) {
                names.push_back(sitting.tester);
            }
        }
        std::sort(names.begin(), names.end());
        names.erase(std::unique(names.begin(), names.end()), names.end());
        for (const std::uint32_t i :
             orderBy(names, [this](TextId id) { return std::string_view(utf8(id)); })) {
            const QString name = m_input.texts.text(names[i]);
            const auto known = m_testersByName.find(name);
            if (known != m_testersByName.end()) {
                m_testers.emplace(names[i], known->second);
            } else if (names[i] != kNoText) {
                const Tester tester{TesterId::make(), name, {}, {}, {}, {}};
                m_testers.emplace(names[i], tester.id);
                add(tester);
            }
        }
        return take();
    }

    Result<void> write(ImportPlan& plan) {
        if (plan.changesNothing()) {
            return {};
        }
        if (plan.id.isNull()) {
            Engine engine;
            engine.id = EngineId::make();
            engine.name = m_input.texts.text(plan.name);
            plan.id = engine.id;
            plan.report.enginesMade.append(engine.name);
            add(engine);
        }
        addRaces(plan);
        const std::vector<std::uint32_t> springs = addSprings(plan);
        addInspections(plan);
        const std::vector<std::uint32_t> sittings = addSittings(plan);
        if (!addReadings(plan, springs, sittings)) {
            return fail(InputFault::Cancelled);
        }
        return take();
    }

private:
    const std::string& utf8(TextId id) const { return m_input.texts.utf8(id); }

    void addRaces(const ImportPlan& plan) {
        for (const std::uint32_t i :
             orderBy(plan.races, [this](std::uint32_t row) { return m_input.races[row].number; })) {
            const RaceRow& row = m_input.races[plan.races[i]];
            Race race;
            race.id = RaceId::make();
            race.engine = plan.id;
            race.number = row.number;
            race.racedOn = row.racedOn();
            race.venue = m_input.texts.text(row.venue);
            race.laps = givenNumber(row.laps);
            race.peakRpm = givenNumber(row.peakRpm);
            if (row.overRev != RaceRow::kNotGiven) {
                race.overRev = row.overRev == 1;
            }
            race.note = m_input.texts.text(row.note);
            add(race);
        }
    }

    /// Returns the rank of each spring by label.
    std::vector<std::uint32_t> addSprings(ImportPlan& plan) {
        const std::vector<std::uint32_t> order =
            orderBy(plan.springs, [this](const ImportPlan::Spring& spring) {
                return std::string_view(utf8(spring.label));
            });
        for (const std::uint32_t i : order) {
            ImportPlan::Spring& spring = plan.springs[i];
            if (spring.id.isNull()) {
                spring.id = SpringId::make();
                add(Spring{spring.id, m_input.texts.text(spring.label), {}, {}, {}});
            }
        }
        return ranksOf(order);
    }

    void addInspections(ImportPlan& plan) {
        for (const std::uint32_t i :
             orderBy(plan.inspections, [](const ImportPlan::Inspection& inspection) {
                 return std::pair(inspection.day, inspection.engineRaces);
             })) {
            ImportPlan::Inspection& inspection = plan.inspections[i];
            if (inspection.id.isNull()) {
                inspection.id = InspectionId::make();
                add(Inspection{inspection.id, plan.id, QDate::fromJulianDay(inspection.day),
                               inspection.engineRaces, true});
            }
        }
    }

    /// Returns the rank of each sitting by inspection, tester, inspector and temperature.
    std::vector<std::uint32_t> addSittings(ImportPlan& plan) {
        const std::vector<std::uint32_t> order =
            orderBy(plan.sittings, [&](const ImportPlan::Sitting& sitting) {
                const ImportPlan::Inspection& inspection = plan.inspections[sitting.inspection];
                return std::tuple(inspection.day, inspection.engineRaces,
                                  std::string_view(utf8(sitting.tester)),
                                  std::string_view(utf8(sitting.inspector)), sitting.milliCelsius);
            });
        for (const std::uint32_t i : order) {
            ImportPlan::Sitting& planned = plan.sittings[i];
            if (!planned.id.isNull()) {
                continue;
            }
            planned.id = SittingId::make();
            Sitting sitting;
            sitting.id = planned.id;
            sitting.inspection = plan.inspections[planned.inspection].id;
            if (planned.tester != kNoText) {
                sitting.tester = m_testers.at(planned.tester);
            }
            sitting.inspector = m_input.texts.text(planned.inspector);
            if (planned.milliCelsius != ReadingRow::kNoTemperature) {
                sitting.engineTemperature = Temperature::milliCelsius(planned.milliCelsius);
            }
            add(sitting);
        }
        return ranksOf(order);
    }

    /// False if the user stopped it.
    bool addReadings(const ImportPlan& plan, const std::vector<std::uint32_t>& springRanks,
                     const std::vector<std::uint32_t>& sittingRanks) {
        const std::vector<std::uint32_t> order =
            orderBy(plan.readings, [&](const ImportPlan::Reading& reading) {
                return std::tuple(sittingRanks[reading.sitting],
                                  m_input.readings[reading.row].place(),
                                  springRanks[reading.spring], reading.hit);
            });
        Reading reading;
        for (const std::uint32_t i : order) {
            const ImportPlan::Reading& planned = plan.readings[i];
            const ReadingRow& row = m_input.readings[planned.row];
            reading.id = ReadingId::make();
            reading.sitting = plan.sittings[planned.sitting].id;
            reading.spring = plan.springs[planned.spring].id;
            reading.place = row.place();
            reading.hit = planned.hit;
            reading.retest = row.retest;
            reading.value = row.value();
            reading.note = m_input.texts.text(row.note);
            add(reading);
            if (++m_readings % kReadingsBetweenReports == 0 && (!m_result || !goOn())) {
                return !m_result; // an error is told by take()
            }
        }
        return true;
    }

    bool goOn() const {
        return !m_progress ||
               m_progress(static_cast<double>(m_readings) / static_cast<double>(m_readingsInAll));
    }

    /// Adds a record unless an earlier one failed.
    template <class Record>
    void add(const Record& record) {
        if (m_result) {
            m_result = m_batch.add(record);
        }
    }

    Result<void> take() const { return m_result; }

    LogbookStore::Batch& m_batch;
    const ExchangeInput& m_input;
    qint64 m_readings = 0;
    qint64 m_readingsInAll;
    const Progress& m_progress;
    Result<void> m_result;
    std::unordered_map<QString, TesterId> m_testersByName;
    std::unordered_map<TextId, TesterId> m_testers;
};

} // namespace

Result<void> writePlans(LogbookStore& store, const ExchangeInput& input,
                        std::vector<ImportPlan>& plans, const Progress& progress,
                        const std::function<Result<void>()>& confirm) {
    qint64 readings = 0;
    bool isNeeded = false;
    for (const ImportPlan& plan : plans) {
        readings += static_cast<qint64>(plan.readings.size());
        isNeeded = isNeeded || !plan.changesNothing();
    }
    if (!isNeeded) {
        return confirm();
    }
    const Result<std::vector<Tester>> testers = store.testers();
    if (!testers) {
        return tl::unexpected(testers.error());
    }
    Result<std::unique_ptr<LogbookStore::Batch>> batch = store.beginBatch();
    if (!batch) {
        return tl::unexpected(batch.error());
    }
    PlanWriter writer(**batch, input, readings, progress);
    Result<void> result = writer.addTesters(*testers, plans);
    for (ImportPlan& plan : plans) {
        if (result) {
            result = writer.write(plan);
        }
    }
    return result.and_then(confirm).and_then([&] { return (*batch)->commit(); });
}

} // namespace coilbook
