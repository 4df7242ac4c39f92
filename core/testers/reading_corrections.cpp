#include "core/testers/reading_corrections.h"

#include "core/testers/spring_temperature.h"

namespace coilbook {

ReadingCorrections::ReadingCorrections(const EngineHistory& history)
    : m_history(history) {
    for (const HistoryTester& tester : history.testers) {
        for (const Calibration& calibration : tester.calibrations) {
            if (tester.corrects) {
                m_curves.emplace(calibration.id, TesterCurve::of(calibration));
            }
        }
    }
}

std::optional<ReadingCorrections::ByTester>
ReadingCorrections::byTester(const HistoryTester& tester, const QDate& on, Force read) const {
    if (!tester.corrects) {
        return std::nullopt;
    }
    if (const Calibration* calibration = calibrationFor(tester.calibrations, tester.id, on)) {
        const std::optional<TesterCurve>& curve = m_curves.at(calibration->id);
        return curve ? std::optional(ByTester{curve->corrected(read), curve->uncertainty(read)})
                     : std::nullopt;
    }
    return tester.zeroOffset ? std::optional(ByTester{read - tester.zeroOffset->force(), {}})
                             : std::nullopt;
}

CorrectedReading ReadingCorrections::of(const HistoryLife& life, const HistoryCell& cell,
                                        const HistoryHit& hit) const {
    return corrected(life, cell.inspection, hit, hit.value.force());
}

CorrectedReading ReadingCorrections::corrected(const HistoryLife& life, std::size_t inspection,
                                               const HistoryHit& hit, Force read) const {
    CorrectedReading reading;
    reading.asRead = read;
    if (hit.tester) {
        const QDate on = m_history.inspections[inspection].on;
        if (const auto by = byTester(m_history.testers[*hit.tester], on, reading.asRead)) {
            reading.byTester = by->force;
            reading.testerUncertainty = by->uncertainty;
        }
    }
    if (m_history.correctsTemperature) {
        if (hit.temperature) {
            reading.at20 = forceAt20(reading.counted(), *hit.temperature,
                                     life.softeningPpm.value_or(kSofteningOfSpringSteelPpm));
        } else {
            reading.temperatureMissing = true;
        }
    }
    return reading;
}

CorrectedReading ReadingCorrections::of(const HistoryLife& life, const HistoryCell& cell) const {
    CorrectedReading mean;
    mean.asRead = cell.mean();
    Force byTester;
    Force counted;
    Force uncertainty;
    bool anyByTester = false;
    bool anyAt20 = false;
    bool allTold = true;
    const auto hits = static_cast<double>(cell.hits.size());
    for (const HistoryHit& hit : cell.hits) {
        const CorrectedReading each = of(life, cell, hit);
        byTester = byTester + each.byTester.value_or(each.asRead) / hits;
        counted = counted + each.counted() / hits;
        anyByTester = anyByTester || each.byTester;
        anyAt20 = anyAt20 || each.at20;
        allTold = allTold && each.testerUncertainty;
        // One curve corrects all of them: its uncertainty does not average out.
        uncertainty = uncertainty + each.testerUncertainty.value_or(Force()) / hits;
        mean.temperatureMissing = mean.temperatureMissing || each.temperatureMissing;
    }
    if (anyByTester) {
        mean.byTester = byTester;
        mean.testerUncertainty = allTold ? std::optional(uncertainty) : std::nullopt;
    }
    if (anyAt20) {
        mean.at20 = counted;
    }
    return mean;
}

Force ReadingCorrections::asReadNow(const HistoryLife& life, Force counted) const {
    const HistoryCell* newest = nullptr;
    for (const HistoryLife& each : m_history.lives) {
        if (!each.cells.empty() &&
            (newest == nullptr || newest->inspection < each.cells.back().inspection)) {
            newest = &each.cells.back();
        }
    }
    if (newest == nullptr) {
        return counted;
    }
    // Corrections are a few percent and nearly level: each round leaves a few percent of the rest.
    constexpr int kRounds = 6;
    Force read = counted;
    for (int i = 0; i < kRounds; ++i) {
        const CorrectedReading reading =
            corrected(life, newest->inspection, newest->hits.back(), read);
        read = counted + (read - reading.counted());
    }
    return read;
}

} // namespace coilbook
