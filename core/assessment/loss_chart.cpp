#include "core/assessment/loss_chart.h"

#include "core/assessment/odds_ahead.h"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

/// Builds the chart of one life.
class ChartOfLife {
public:
    ChartOfLife(const EngineHistory& history, const Assessment& assessment, const HistoryLife& life,
                const SpringAssessment& spring)
        : m_history(history)
        , m_assessment(assessment)
        , m_life(life)
        , m_spring(spring)
        , m_corrections(history) {}

    std::vector<LossChart::Point> readings() const {
        std::vector<LossChart::Point> points;
        for (std::size_t c = 0; c < m_life.cells.size(); ++c) {
            const HistoryCell& cell = m_life.cells[c];
            const HistoryInspection& inspection = m_history.inspections[cell.inspection];
            LossChart::Point point;
            point.inspection = inspection.id;
            point.races = static_cast<double>(inspection.races);
            point.pressure = cell.mean();
            point.reading = m_corrections.of(m_life, cell);
            point.loss = measuredLossAt(m_life, c);
            point.on = inspection.on;
            point.hits = static_cast<int>(cell.hits.size());
            point.tester = testersOf(cell);
            addFindings(point, cell);
            points.push_back(std::move(point));
        }
        return points;
    }

    /// The estimate on the engine's races: level while the spring was out of the engine.
    std::vector<LossChart::BandPoint> estimate() const {
        constexpr int kMostPoints = 120;
        std::vector<LossChart::BandPoint> points;
        if (m_spring.trend.empty()) {
            return points;
        }
        const int from = baselineRaces();
        const int to = m_history.racesNow;
        const int stride = std::max(1, (to - from) / kMostPoints);
        for (int races = from; races < to; races += stride) {
            points.push_back(at(races, racesWhileFitted(m_life.spans, from, races)));
        }
        points.push_back(band(to, m_spring.trend.back()));
        return points;
    }

    std::vector<LossChart::BandPoint> projection() const {
        std::vector<LossChart::BandPoint> points;
        for (const TrendPoint& point : m_spring.projection) {
            const double ahead = point.exposure - m_spring.exposure;
            points.push_back(band(m_history.racesNow + ahead, point));
        }
        return points;
    }

    std::vector<LossChart::Mark> marks() const {
        std::vector<LossChart::Mark> marks;
        for (const FittingSpan& span : m_life.spans) {
            if (isSwap(span)) {
                marks.push_back({LossChart::Mark::Kind::Swap, static_cast<double>(span.fittedRaces),
                                 span.fittedOn, m_life.label});
            }
        }
        for (const HistoryRace& race : m_history.races) {
            if (race.overRev && racesWhileFitted(m_life.spans, race.number - 1, race.number) > 0) {
                marks.push_back({LossChart::Mark::Kind::OverRev, static_cast<double>(race.number),
                                 race.on,
                                 race.peakRpm ? QString::number(*race.peakRpm) : QString()});
            }
        }
        for (const HistoryLevelChange& change : m_life.levelChanges) {
            marks.push_back({LossChart::Mark::Kind::LevelChange, static_cast<double>(change.races),
                             change.on, change.note});
        }
        for (const HistoryRunning& running : m_history.running) {
            if (ranAtAll(running)) {
                marks.push_back({LossChart::Mark::Kind::Running, static_cast<double>(running.races),
                                 running.on, running.note});
            }
        }
        std::stable_sort(marks.begin(), marks.end(),
                         [](const auto& a, const auto& b) { return a.races < b.races; });
        return marks;
    }

private:
    /// What the model found about a reading.
    void addFindings(LossChart::Point& point, const HistoryCell& cell) const {
        for (const EventFinding& event : m_spring.events) {
            if (event.inspection == cell.inspection) {
                point.event = event;
            }
        }
        Force kept;
        for (const HistoryHit& hit : cell.hits) {
            const auto& screened = m_spring.hitsSetAside;
            if (std::find(screened.begin(), screened.end(), hit.reading) != screened.end()) {
                ++point.hitsSetAside;
            } else {
                kept = kept + m_corrections.of(m_life, cell, hit).counted();
            }
        }
        const InspectionAssessment& inspection = m_assessment.inspections[cell.inspection];
        if (inspection.shift && inspection.shifted) {
            point.shift = inspection.shift->mean;
        }
        const int counted = point.hits - point.hitsSetAside;
        if (m_spring.fittedBaseline && inspection.shift && counted > 0) {
            const Force level = *m_spring.fittedBaseline + addedBy(cell);
            point.corrected = level - (kept / counted - inspection.shift->mean);
        }
    }

    /// What level changes had added to the pressure by a reading.
    Force addedBy(const HistoryCell& reading) const {
        Force added;
        auto step = m_spring.levelSteps.begin();
        for (const HistoryCell& cell : m_life.cells) {
            if (cell.newLevel && cell.inspection <= reading.inspection &&
                step != m_spring.levelSteps.end()) {
                added = added + *step++;
            }
        }
        return added;
    }

    /// Whether the spring was in the engine then, its baseline behind it.
    bool ranAtAll(const HistoryRunning& running) const {
        if (m_life.cells.empty()) {
            return false;
        }
        const QDate baseline = m_history.inspections[m_life.cells.front().inspection].on;
        return running.on > baseline &&
               std::any_of(m_life.spans.begin(), m_life.spans.end(), [&](const FittingSpan& span) {
                   return running.on > span.fittedOn &&
                          (span.endedOn.isNull() || running.on <= span.endedOn);
               });
    }

    int baselineRaces() const {
        return m_history.inspections[m_life.cells.front().inspection].races;
    }

    QString testersOf(const HistoryCell& cell) const {
        QStringList names;
        for (const HistoryHit& hit : cell.hits) {
            if (hit.tester && !names.contains(m_history.testers[*hit.tester].name)) {
                names << m_history.testers[*hit.tester].name;
            }
        }
        return names.join(QStringLiteral(", "));
    }

    LossChart::BandPoint band(double races, const TrendPoint& point) const {
        return {races, point.mean, point.low90, point.high90};
    }

    /// The estimate at an exposure, between the two nearest points that the assessment gives.
    LossChart::BandPoint at(double races, double exposure) const {
        const std::vector<TrendPoint>& trend = m_spring.trend;
        const auto after =
            std::lower_bound(trend.begin(), trend.end(), exposure,
                             [](const TrendPoint& p, double x) { return p.exposure < x; });
        if (after == trend.end()) {
            return band(races, trend.back());
        }
        if (after == trend.begin()) {
            return band(races, trend.front());
        }
        const TrendPoint& a = *(after - 1);
        const TrendPoint& b = *after;
        const double share = (exposure - a.exposure) / (b.exposure - a.exposure);
        const auto between = [share](Force from, Force to) {
            return from + (to - from) * share;
        };
        return band(races, {exposure, between(a.mean, b.mean), between(a.low90, b.low90),
                            between(a.high90, b.high90)});
    }

    /// Whether a spring came into the engine here in the place of another, or from another place.
    bool isSwap(const FittingSpan& span) const {
        if (!(span == m_life.spans.front())) {
            return true;
        }
        return std::any_of(m_history.lives.begin(), m_history.lives.end(),
                           [&](const HistoryLife& other) {
                               return std::any_of(other.spans.begin(), other.spans.end(),
                                                  [&](const FittingSpan& earlier) {
                                                      return other.spring != m_life.spring &&
                                                             earlier.place == span.place &&
                                                             earlier.endedOn == span.fittedOn &&
                                                             earlier.endedRaces == span.fittedRaces;
                                                  });
                           });
    }

    const EngineHistory& m_history;
    const Assessment& m_assessment;
    const HistoryLife& m_life;
    const SpringAssessment& m_spring;
    ReadingCorrections m_corrections;
};

/// Grows to hold what it is shown.
struct Extent {
    double least = 0.0;
    double most = 0.0;

    void hold(double value) {
        least = std::min(least, value);
        most = std::max(most, value);
    }
};

Extent lossExtent(const std::vector<LossChart>& charts, Force limit) {
    const double atLimit = limit.inPoundsForce();
    Extent extent;
    extent.hold(1.1 * atLimit);
    for (const LossChart& chart : charts) {
        for (const LossChart::Point& point : chart.readings) {
            extent.hold(point.loss.inPoundsForce());
            if (point.corrected && !point.isSetAside()) {
                extent.hold(point.corrected->inPoundsForce());
            }
        }
        for (const auto* line : {&chart.estimate, &chart.projection}) {
            for (const LossChart::BandPoint& point : *line) {
                extent.hold(point.mean.inPoundsForce());
                extent.hold(std::max(point.low90.inPoundsForce(), -0.5 * atLimit));
                extent.hold(std::min(point.high90.inPoundsForce(), 2.0 * atLimit));
            }
        }
    }
    return extent;
}

} // namespace

LossChart lossChartOf(const EngineHistory& history, const Assessment& assessment,
                      const SpringAssessment& spring) {
    LossChart chart;
    chart.spring = spring.id;
    chart.label = spring.label;
    chart.place = spring.place;
    chart.baseline = spring.baseline;
    chart.limit = assessment.rules.limit;
    chart.provisional = spring.provisional && spring.loss.has_value();
    const auto life =
        std::find_if(history.lives.begin(), history.lives.end(),
                     [&](const HistoryLife& candidate) { return candidate.spring == spring.id; });
    if (life != history.lives.end()) {
        const ChartOfLife parts(history, assessment, *life, spring);
        chart.readings = parts.readings();
        chart.estimate = parts.estimate();
        chart.projection = parts.projection();
        chart.marks = parts.marks();
    }
    return chart;
}

double roundTick(double span, int intervals) {
    const double least = span / intervals;
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double step : {1.0, 2.0, 5.0}) {
        // A span of exactly so many steps must not fall over the edge by a rounding error.
        if (step * power >= least * (1.0 - 1e-9)) {
            return step * power;
        }
    }
    return 10.0 * power;
}

LossChartRange commonRange(const std::vector<LossChart>& charts, const Assessment& assessment,
                           ForceUnit unit) {
    constexpr int kLossIntervals = 6;
    constexpr int kRaceIntervals = 8;
    LossChartRange range;

    double first = assessment.racesNow;
    for (const LossChart& chart : charts) {
        for (const LossChart::Point& point : chart.readings) {
            first = std::min(first, point.races);
        }
    }
    const double last =
        assessment.racesNow + std::clamp(assessment.rules.racesAhead, 1, kMostRacesAhead);
    range.raceTick = std::max(1.0, roundTick(last - first, kRaceIntervals));
    range.firstRace = std::floor(first / range.raceTick) * range.raceTick;
    range.lastRace = std::ceil(last / range.raceTick) * range.raceTick;

    const Extent extent = lossExtent(charts, assessment.rules.limit);
    const double least = Force::poundsForce(extent.least).in(unit);
    const double most = Force::poundsForce(extent.most).in(unit);
    const double tick = most > least ? roundTick(most - least, kLossIntervals) : 1.0;
    range.tick = Force::of(tick, unit);
    range.least = Force::of(std::floor(least / tick) * tick, unit);
    range.most = Force::of(std::max(1.0, std::ceil(most / tick)) * tick, unit);
    return range;
}

} // namespace coilbook
