#include "core/wear/season_builder.h"

#include "core/testers/reading_corrections.h"
#include "core/wear/exposure.h"

#include <algorithm>
#include <optional>
#include <tuple>

namespace coilbook::wear {

namespace {

constexpr std::size_t kMostOverRevs = 10;

class SeasonBuilder {
public:
    explicit SeasonBuilder(const EngineHistory& history)
        : m_history(history)
        , m_corrections(history) {}

    SeasonOfHistory build() {
        collectSessions();
        if (m_made.sessions.empty()) {
            return std::move(m_made);
        }
        collectGroups();
        screen();
        addOverRevs();
        addLives();
        addLevelSteps();
        return std::move(m_made);
    }

private:
    const HistoryCell& cellOf(const HitGroup& group, std::size_t position) const {
        return m_history.lives[m_made.lives[group.life]].cells[position];
    }

    void collectSessions() {
        std::vector<bool> read(m_history.inspections.size(), false);
        for (const HistoryLife& life : m_history.lives) {
            for (const HistoryCell& cell : life.cells) {
                read[cell.inspection] = true;
            }
        }
        m_sessionOf.resize(read.size());
        for (std::size_t i = 0; i < read.size(); ++i) {
            m_sessionOf[i] = m_made.sessions.size();
            if (read[i]) {
                m_made.sessions.push_back(i);
            }
        }
        if (m_made.sessions.empty()) {
            return;
        }
        m_first = countAt(m_made.sessions.front());
        m_exposure.emplace(m_history, m_first.races);
        for (const std::size_t inspection : m_made.sessions) {
            m_made.season.sessions.push_back(m_exposure->between(m_first, countAt(inspection)));
        }
        m_made.season.now = m_exposure->between(m_first, now());
        m_made.season.runIn = m_history.springsRunIn;
        m_made.racesWithoutLaps = m_exposure->racesWithoutLaps();
        m_made.leavesRunningOut = m_exposure->leavesRunningOut();
    }

    RaceCount countAt(std::size_t inspection) const {
        return {m_history.inspections[inspection].on, m_history.inspections[inspection].races};
    }

    RaceCount now() const { return {m_history.asOf, m_history.racesNow}; }

    std::size_t testerGroup(const HistoryHit& hit) const {
        return hit.tester.value_or(m_history.testers.size());
    }

    /// Lives with a reading in an order of their own: sums must not depend on the history's.
    std::vector<std::size_t> readLives() const {
        std::vector<std::size_t> lives;
        for (std::size_t i = 0; i < m_history.lives.size(); ++i) {
            if (!m_history.lives[i].cells.empty()) {
                lives.push_back(i);
            }
        }
        std::sort(lives.begin(), lives.end(), [&](std::size_t a, std::size_t b) {
            const HistoryLife& one = m_history.lives[a];
            const HistoryLife& other = m_history.lives[b];
            return std::tie(one.place, one.cells.front().inspection, one.label) <
                   std::tie(other.place, other.cells.front().inspection, other.label);
        });
        return lives;
    }

    void collectGroups() {
        for (const std::size_t i : readLives()) {
            const HistoryLife& life = m_history.lives[i];
            for (std::size_t c = 0; c < life.cells.size(); ++c) {
                HitGroup group;
                group.life = m_made.lives.size();
                group.session = m_sessionOf[life.cells[c].inspection];
                group.tester = testerGroup(life.cells[c].hits.front());
                group.kept = life.cells[c].judgement == ReadingJudgement::Kept;
                for (const HistoryHit& hit : life.cells[c].hits) {
                    const Force counted = m_corrections.of(life, life.cells[c], hit).counted();
                    group.hits.push_back(counted.inPoundsForce());
                }
                m_groups.push_back(std::move(group));
                m_cellOfGroup.push_back(c);
            }
            m_made.lives.push_back(i);
        }
        std::vector<std::size_t> order(m_groups.size());
        for (std::size_t g = 0; g < order.size(); ++g) {
            order[g] = g;
        }
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return m_groups[a].session < m_groups[b].session;
        });
        std::vector<HitGroup> groups;
        std::vector<std::size_t> cells;
        for (const std::size_t g : order) {
            groups.push_back(std::move(m_groups[g]));
            cells.push_back(m_cellOfGroup[g]);
        }
        m_groups = std::move(groups);
        m_cellOfGroup = std::move(cells);
    }

    std::vector<double> graduations() const {
        std::vector<std::vector<TypedForce>> readings(m_history.testers.size() + 1);
        for (const HistoryLife& life : m_history.lives) {
            for (const HistoryCell& cell : life.cells) {
                for (const HistoryHit& hit : cell.hits) {
                    readings[testerGroup(hit)].push_back(hit.value);
                }
            }
        }
        std::vector<double> found;
        for (std::size_t tester = 0; tester < readings.size(); ++tester) {
            const bool registered = tester < m_history.testers.size() &&
                                    m_history.testers[tester].graduation.has_value();
            found.push_back(registered
                                ? m_history.testers[tester].graduation->force().inPoundsForce()
                                : graduationOf(readings[tester]));
        }
        return found;
    }

    void screen() {
        const std::vector<double> steps = graduations();
        for (const ScreenedHit& hit : screenHits(m_groups, steps)) {
            m_made.screened.push_back(
                cellOf(m_groups[hit.group], m_cellOfGroup[hit.group]).hits[hit.hit].reading);
        }
        for (std::size_t tester = 0; tester < steps.size(); ++tester) {
            m_made.testers.push_back(hitNoiseOf(m_groups, tester, steps[tester]));
            m_made.season.hitDegreesOfFreedom += m_made.testers.back().degreesOfFreedom;
        }
    }

    void addOverRevs() {
        for (const HistoryRace& race : m_history.races) {
            if (race.overRev && race.number > m_first.races) {
                m_overRevs.push_back(race.number);
            }
        }
        std::sort(m_overRevs.begin(), m_overRevs.end());
        if (m_overRevs.size() > kMostOverRevs) {
            m_overRevs.erase(m_overRevs.begin(), m_overRevs.end() - kMostOverRevs);
        }
        m_made.season.overRevs = m_overRevs.size();
        m_made.overRevRaces = m_overRevs;
    }

    double inExhaustPlaces(const HistoryLife& life, const RaceCount& from,
                           const RaceCount& to) const {
        std::vector<FittingSpan> exhaust;
        std::copy_if(life.spans.begin(), life.spans.end(), std::back_inserter(exhaust),
                     [](const FittingSpan& span) { return span.place.valve == Valve::Exhaust; });
        return m_exposure->whileFitted(exhaust, from, to);
    }

    std::vector<double> overRevsOf(const HistoryLife& life, int from, int to) const {
        std::vector<double> indicators;
        for (const int race : m_overRevs) {
            const bool inside =
                race > from && race <= to && racesWhileFitted(life.spans, race - 1, race) > 0;
            indicators.push_back(inside ? 1.0 : 0.0);
        }
        return indicators;
    }

    std::size_t outSessionOf(const HistoryLife& life) const {
        if (life.fitted) {
            return kStillFitted;
        }
        const FittingSpan& last = life.spans.back();
        for (std::size_t t = 0; t < m_made.sessions.size(); ++t) {
            const HistoryInspection& inspection = m_history.inspections[m_made.sessions[t]];
            if (std::tuple(inspection.on.toJulianDay(), inspection.races) >=
                std::tuple(last.endedOn.toJulianDay(), last.endedRaces.value_or(0))) {
                return t;
            }
        }
        return m_made.sessions.size();
    }

    void addLives() {
        for (const std::size_t index : m_made.lives) {
            const HistoryLife& source = m_history.lives[index];
            const RaceCount baseline = countAt(source.cells.front().inspection);
            Life life;
            life.kind = source.place.valve == Valve::Exhaust ? 1 : 0;
            life.installed = m_exposure->between(m_first, baseline);
            life.outSession = outSessionOf(source);
            life.xNow = m_exposure->whileFitted(source.spans, baseline, now());
            life.xExhaustNow = inExhaustPlaces(source, baseline, now());
            life.overRevsNow = overRevsOf(source, baseline.races, m_history.racesNow);
            m_made.runningNow.push_back(
                m_exposure->runningWhileFitted(source.spans, baseline, now()));
            m_made.season.lives.push_back(std::move(life));
        }
        for (std::size_t g = 0; g < m_groups.size(); ++g) {
            addCell(m_groups[g], cellOf(m_groups[g], m_cellOfGroup[g]));
        }
    }

    /// Before its first reading a spring cannot have dropped as far as anybody knows.
    static Say sayOf(ReadingJudgement judgement, bool isFirst) {
        switch (judgement) {
        case ReadingJudgement::LeftToModel:
            return Say::None;
        case ReadingJudgement::Kept:
            return Say::Kept;
        case ReadingJudgement::SetAside:
        case ReadingJudgement::DropDenied:
            return Say::Misread;
        case ReadingJudgement::DropConfirmed:
            return isFirst ? Say::Kept : Say::Drop;
        }
        Q_UNREACHABLE();
    }

    void addLevelSteps() {
        for (std::size_t i = 0; i < m_made.lives.size(); ++i) {
            const std::vector<HistoryCell>& cells = m_history.lives[m_made.lives[i]].cells;
            for (std::size_t c = 0; c < cells.size(); ++c) {
                if (cells[c].newLevel) {
                    m_made.season.lives[i].levelChanges.push_back({c});
                }
            }
        }
    }

    void addCell(const HitGroup& group, const HistoryCell& source) {
        const HistoryLife& history = m_history.lives[m_made.lives[group.life]];
        const RaceCount baseline = countAt(history.cells.front().inspection);
        const RaceCount then = countAt(source.inspection);
        Cell cell;
        cell.session = group.session;
        cell.x = m_exposure->whileFitted(history.spans, baseline, then);
        cell.xExhaust = inExhaustPlaces(history, baseline, then);
        cell.hits = static_cast<int>(group.hits.size());
        cell.tester = group.tester;
        for (const double hit : group.hits) {
            cell.mean += hit / cell.hits;
        }
        for (const double hit : group.hits) {
            cell.sumSquares += (hit - cell.mean) * (hit - cell.mean);
        }
        cell.fixedVariance = m_made.testers[group.tester].fixedVariance(cell.hits);
        cell.overRevs = overRevsOf(history, baseline.races, then.races);
        std::vector<Cell>& cells = m_made.season.lives[group.life].cells;
        cell.say = sayOf(source.judgement, cells.empty());
        cells.push_back(std::move(cell));
    }

    const EngineHistory& m_history;
    ReadingCorrections m_corrections;
    SeasonOfHistory m_made;
    std::vector<std::size_t> m_sessionOf;
    RaceCount m_first;
    std::optional<Exposure> m_exposure;
    std::vector<HitGroup> m_groups;
    std::vector<std::size_t> m_cellOfGroup;
    std::vector<int> m_overRevs;
};

} // namespace

SeasonOfHistory seasonOf(const EngineHistory& history) {
    return SeasonBuilder(history).build();
}

} // namespace coilbook::wear
