#include "core/domain/history.h"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <unordered_map>

namespace coilbook {

namespace {

/// Puts together the history of one engine up to a day.
class HistoryBuilder {
public:
    HistoryBuilder(const EngineLog& log, const QDate& asOf)
        : m_log(log) {
        m_history.engine = log.engine.name;
        m_history.asOf = asOf;
        m_history.springsRunIn = log.engine.springsRunIn;
        m_history.exposureUnit = log.engine.exposureUnit;
        m_history.correctsTemperature = log.engine.correctsTemperature;
    }

    EngineHistory build() {
        if (!m_history.asOf.isNull()) {
            addTesters();
            addInspections();
            addRaces();
            addRunning();
            addLives();
            addCells();
            addLevelChanges();
            finishLives();
        }
        return std::move(m_history);
    }

private:
    void addTesters() {
        for (const Tester& tester : m_log.testers) {
            m_testers.emplace(tester.id, m_history.testers.size());
            HistoryTester known{tester.name, tester.range,    tester.graduation,
                                tester.id,   tester.corrects, tester.zeroOffset};
            std::copy_if(m_log.calibrations.begin(), m_log.calibrations.end(),
                         std::back_inserter(known.calibrations), [&](const Calibration& each) {
                             return each.tester == tester.id && !each.withdrawn;
                         });
            m_history.testers.push_back(std::move(known));
        }
    }

    void addInspections() {
        for (const Inspection& inspection : m_log.inspections) {
            if (inspection.inspectedOn <= m_history.asOf) {
                m_history.inspections.push_back(
                    {inspection.id, inspection.inspectedOn, inspection.engineRaces});
                m_history.racesNow = std::max(m_history.racesNow, inspection.engineRaces);
            }
        }
    }

    void addRaces() {
        for (const Race& race : m_log.races) {
            if (race.racedOn <= m_history.asOf) {
                m_history.races.push_back({race.number, race.racedOn, race.laps, race.peakRpm,
                                           isOverRev(race, m_log.engine.rpmCeiling)});
                m_history.racesNow = std::max(m_history.racesNow, race.number);
            }
        }
    }

    void addRunning() {
        for (const Running& running : m_log.running) {
            if (!running.withdrawn && running.ranOn <= m_history.asOf) {
                m_history.running.push_back({running.ranOn, running.engineRaces, running.laps,
                                             running.raceThousandths, running.note});
            }
        }
    }

    void addLives() {
        m_hits = currentHits(m_log);
        for (const FittingSpan& span : fittingSpans(m_log, m_hits, m_history.asOf)) {
            HistoryLife& life = lifeOf(span.spring);
            life.spans.push_back(span);
        }
        for (HistoryLife& life : m_history.lives) {
            std::sort(life.spans.begin(), life.spans.end(),
                      [](const FittingSpan& a, const FittingSpan& b) {
                          return std::tuple(a.fittedOn.toJulianDay(), a.fittedRaces) <
                                 std::tuple(b.fittedOn.toJulianDay(), b.fittedRaces);
                      });
            life.fitted = life.spans.back().endedOn.isNull();
            life.place = life.spans.back().place;
        }
    }

    HistoryLife& lifeOf(const SpringId& spring) {
        const auto [entry, isNew] = m_lives.emplace(spring, m_history.lives.size());
        if (isNew) {
            HistoryLife life;
            life.spring = spring;
            const auto record =
                std::find_if(m_log.springs.begin(), m_log.springs.end(),
                             [&](const Spring& candidate) { return candidate.id == spring; });
            if (record != m_log.springs.end()) {
                life.label = record->label;
                life.softeningPpm = record->softeningPpm;
            }
            m_history.lives.push_back(std::move(life));
        }
        return m_history.lives[entry->second];
    }

    /// Hits come sorted by inspection, place, spring and hit. The inspections of a log are sorted
    /// by day, so those up to the day keep their index.
    void addCells() {
        for (const CurrentHit& hit : m_hits) {
            if (hit.crossedOut || hit.inspection >= m_history.inspections.size()) {
                continue;
            }
            const Reading& reading = m_log.readings[hit.row];
            HistoryLife& life = lifeOf(reading.spring);
            if (life.cells.empty() || life.cells.back().inspection != hit.inspection) {
                HistoryCell cell;
                cell.inspection = hit.inspection;
                cell.place = reading.place;
                cell.judgement = judgementInForce(
                    m_log.decisions, m_log.inspections[hit.inspection].id, reading.spring);
                life.cells.push_back(std::move(cell));
            }
            const Sitting& sitting = m_log.sittings[hit.sitting];
            life.cells.back().hits.push_back(
                {reading.id, reading.value, testerOf(sitting), sitting.engineTemperature});
        }
    }

    std::optional<std::size_t> testerOf(const Sitting& sitting) const {
        if (!sitting.tester) {
            return std::nullopt;
        }
        const auto found = m_testers.find(*sitting.tester);
        return found == m_testers.end() ? std::nullopt : std::optional(found->second);
    }

    /// A change before the baseline, or not followed by a reading yet, shows in no reading.
    void addLevelChanges() {
        for (const LevelChange& change : m_log.levelChanges) {
            const auto life = m_lives.find(change.spring);
            if (!change.withdrawn && change.changedOn <= m_history.asOf && life != m_lives.end()) {
                m_history.lives[life->second].levelChanges.push_back(
                    {change.kind, change.changedOn, change.engineRaces, change.note});
            }
        }
        for (HistoryLife& life : m_history.lives) {
            for (std::size_t c = 1; c < life.cells.size(); ++c) {
                life.cells[c].newLevel =
                    isLevelChanged(m_log.levelChanges, life.spring,
                                   m_log.inspections[life.cells[c - 1].inspection],
                                   m_log.inspections[life.cells[c].inspection]);
            }
        }
    }

    void finishLives() {
        for (HistoryLife& life : m_history.lives) {
            if (life.cells.empty()) {
                continue;
            }
            const int baseline = m_history.inspections[life.cells.front().inspection].races;
            for (HistoryCell& cell : life.cells) {
                cell.exposure = racesWhileFitted(life.spans, baseline,
                                                 m_history.inspections[cell.inspection].races);
            }
            life.exposureNow = racesWhileFitted(life.spans, baseline, m_history.racesNow);
        }
        std::sort(m_history.lives.begin(), m_history.lives.end(),
                  [](const HistoryLife& a, const HistoryLife& b) {
                      const FittingSpan& first = a.spans.back();
                      const FittingSpan& second = b.spans.back();
                      return std::tuple(a.place, first.fittedOn.toJulianDay(), first.fittedRaces,
                                        a.fitted, a.label) <
                             std::tuple(b.place, second.fittedOn.toJulianDay(), second.fittedRaces,
                                        b.fitted, b.label);
                  });
    }

    const EngineLog& m_log;
    EngineHistory m_history;
    std::vector<CurrentHit> m_hits;
    std::unordered_map<TesterId, std::size_t, IdHash<TesterTag>> m_testers;
    std::unordered_map<SpringId, std::size_t, IdHash<SpringTag>> m_lives;
};

} // namespace

EngineHistory historyOf(const EngineLog& log, std::optional<QDate> asOf) {
    return HistoryBuilder(log, asOf.value_or(newestDay(log))).build();
}

} // namespace coilbook
