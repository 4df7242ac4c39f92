#include "core/exchange/import.h"

#include "core/exchange/engine_check.h"
#include "core/exchange/names_by_case.h"
#include "core/exchange/plan_writer.h"

#include <algorithm>
#include <unordered_map>

namespace coilbook {

namespace {

// Rough shares of the time, for the progress.
constexpr double kReadShare = 0.2;
constexpr double kCheckedShare = 0.3;

/// One import from the first byte to the last row.
class Import {
public:
    Import(LogbookStore& store, const Clock& clock, const Progress& progress,
           const ImportConfirmation& confirm)
        : m_store(store)
        , m_clock(clock)
        , m_progress(progress)
        , m_confirm(confirm) {}

    Result<ImportReport> run(const QStringList& paths) {
        const Progress reading = [this](double part) {
            return goOn(kReadShare * part);
        };
        if (!readExchangeFiles(paths, m_clock, reading, m_input, m_faults)) {
            return fail(InputFault::Cancelled);
        }
        groupByEngine();
        if (Result<void> checked = check(); !checked) {
            return tl::unexpected(checked.error());
        }
        if (!m_faults.isEmpty()) {
            return tl::unexpected(m_faults.first());
        }
        const Progress writing = [this](double part) {
            return goOn(kCheckedShare + (1.0 - kCheckedShare) * part);
        };
        const auto confirming = [this] {
            return m_confirm ? m_confirm(report()) : Result<void>();
        };
        if (Result<void> written = writePlans(m_store, m_input, m_plans, writing, confirming);
            !written) {
            return tl::unexpected(written.error());
        }
        return report();
    }

private:
    bool goOn(double part) const { return !m_progress || m_progress(part); }

    /// Engines by name in code points, so that the result does not depend on the order of rows.
    void groupByEngine() {
        std::unordered_map<TextId, std::size_t> groups;
        const auto groupOf = [&](TextId engine) -> EngineRows& {
            const auto [group, isNew] = groups.try_emplace(engine, m_engines.size());
            if (isNew) {
                m_engines.push_back({engine, {}, {}});
            }
            return m_engines[group->second];
        };
        for (std::uint32_t row = 0; row < m_input.readings.size(); ++row) {
            groupOf(m_input.readings[row].engine).readings.push_back(row);
        }
        for (std::uint32_t row = 0; row < m_input.races.size(); ++row) {
            groupOf(m_input.races[row].engine).races.push_back(row);
        }
        std::sort(m_engines.begin(), m_engines.end(),
                  [this](const EngineRows& a, const EngineRows& b) {
                      return m_input.texts.utf8(a.engine) < m_input.texts.utf8(b.engine);
                  });
    }

    Result<void> check() {
        const Result<std::vector<EngineSummary>> stored = m_store.engines();
        if (!stored) {
            return tl::unexpected(stored.error());
        }
        std::unordered_map<TextId, EngineId> ids;
        std::vector<QString> names;
        for (const EngineSummary& engine : *stored) {
            ids.emplace(m_input.texts.fromText(engine.name), engine.id);
            names.push_back(engine.name);
        }
        checkEngineNames(names);
        if (Result<void> testers = checkTesterNames(); !testers) {
            return testers;
        }
        for (EngineRows& rows : m_engines) {
            const auto id = ids.find(rows.engine);
            const bool isStored = id != ids.end();
            Result<EngineLog> log = isStored ? m_store.engineLog(id->second) : EngineLog();
            if (!log) {
                return tl::unexpected(log.error());
            }
            m_plans.push_back(EngineCheck(m_input, m_faults, rows, *log, isStored).run());
            rows = {};
            const double part =
                static_cast<double>(m_plans.size()) / static_cast<double>(m_engines.size());
            if (!goOn(kReadShare + (kCheckedShare - kReadShare) * part)) {
                return fail(InputFault::Cancelled);
            }
        }
        return {};
    }

    /// Two engines whose names differ only in case: the one that comes later is at fault.
    void checkEngineNames(const std::vector<QString>& stored) {
        NamesByCase names(stored);
        RowFaults faults(m_input, m_faults);
        const auto checkRow = [&](const auto& row) {
            if (const std::optional<QString> other = names.rivalOf(row.engine, m_input.texts)) {
                faults.add(row, Column::Engine, LogbookFault::NameDiffersInCaseOnly,
                           {m_input.texts.text(row.engine), *other});
            }
        };
        // In the order of files, whichever kind they are.
        auto race = m_input.races.begin();
        auto reading = m_input.readings.begin();
        while (race != m_input.races.end() || reading != m_input.readings.end()) {
            const bool takesRace = reading == m_input.readings.end() ||
                                   (race != m_input.races.end() && race->file < reading->file);
            if (takesRace) {
                checkRow(*race++);
            } else {
                checkRow(*reading++);
            }
        }
    }

    Result<void> checkTesterNames() {
        const Result<std::vector<Tester>> stored = m_store.testers();
        if (!stored) {
            return tl::unexpected(stored.error());
        }
        std::vector<QString> known;
        for (const Tester& tester : *stored) {
            known.push_back(tester.name);
        }
        NamesByCase names(known);
        RowFaults faults(m_input, m_faults);
        for (const ReadingRow& row : m_input.readings) {
            if (const std::optional<QString> other = names.rivalOf(row.tester, m_input.texts)) {
                faults.add(row, Column::Tester, LogbookFault::NameDiffersInCaseOnly,
                           {m_input.texts.text(row.tester), *other});
            }
        }
        return {};
    }

    ImportReport report() const {
        ImportReport report;
        for (const ImportPlan& plan : m_plans) {
            report += plan.report;
        }
        report.readingsRead = static_cast<qint64>(m_input.readings.size());
        report.racesRead = static_cast<qint64>(m_input.races.size());
        return report;
    }

    LogbookStore& m_store;
    const Clock& m_clock;
    const Progress& m_progress;
    const ImportConfirmation& m_confirm;
    ExchangeInput m_input;
    FaultLog m_faults;
    std::vector<EngineRows> m_engines;
    std::vector<ImportPlan> m_plans;
};

} // namespace

Result<ImportReport> importFiles(LogbookStore& store, const QStringList& paths, const Clock& clock,
                                 const Progress& progress, const ImportConfirmation& confirm) {
    return Import(store, clock, progress, confirm).run(paths);
}

} // namespace coilbook
