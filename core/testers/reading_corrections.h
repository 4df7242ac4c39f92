#pragma once

#include "core/domain/history.h"
#include "core/testers/tester_curve.h"

#include <map>
#include <optional>

namespace coilbook {

/// A reading as read, and what is known to be wrong with it taken off.
struct CorrectedReading {
    Force asRead;
    /// With the tester's correction taken into account; empty: not corrected.
    std::optional<Force> byTester;
    /// Standard uncertainty of that correction; empty where the calibration cannot tell.
    std::optional<Force> testerUncertainty;
    /// At 20 °C, from byTester where there is one; empty: not corrected.
    std::optional<Force> at20;
    /// The engine corrects for temperature, and none was noted with this reading.
    bool temperatureMissing = false;

    /// What the assessment uses.
    [[nodiscard]] Force counted() const { return at20.value_or(byTester.value_or(asRead)); }

    [[nodiscard]] bool isCorrected() const { return at20 || byTester; }

    bool operator==(const CorrectedReading&) const = default;
};

/// Corrects the readings of one history: by the calibration of the tester that covers the day of
/// the inspection, or where it has none by its zero offset; and to 20 °C where the engine asks for
/// it. The record itself is never touched. Refers to the history, which must outlive it.
class ReadingCorrections {
public:
    explicit ReadingCorrections(const EngineHistory& history);

    [[nodiscard]] CorrectedReading of(const HistoryLife& life, const HistoryCell& cell,
                                      const HistoryHit& hit) const;

    /// The same for the mean of a cell's hits.
    [[nodiscard]] CorrectedReading of(const HistoryLife& life, const HistoryCell& cell) const;

    /// What would be read from a spring whose force counts as `counted`, with the tester and at the
    /// temperature of the newest hit in the history: `counted` itself where that is not corrected.
    [[nodiscard]] Force asReadNow(const HistoryLife& life, Force counted) const;

private:
    struct ByTester {
        Force force;
        std::optional<Force> uncertainty;
    };

    [[nodiscard]] std::optional<ByTester> byTester(const HistoryTester& tester, const QDate& on,
                                                   Force read) const;

    /// `hit` says with what and how warm; `read` is what was read.
    [[nodiscard]] CorrectedReading corrected(const HistoryLife& life, std::size_t inspection,
                                             const HistoryHit& hit, Force read) const;

    const EngineHistory& m_history;
    std::map<CalibrationId, std::optional<TesterCurve>> m_curves;
};

} // namespace coilbook
