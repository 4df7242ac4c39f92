#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/odds_ahead.h"
#include "core/domain/history.h"
#include "core/statistics/line_fit.h"

#include <optional>
#include <vector>

namespace coilbook {

/// The trend of one spring, first form: the least-squares straight line of its inspections' means
/// on its exposure (races run since its baseline while it was fitted).
///
/// The loss is what the line has fallen since exposure 0: fitted baseline minus fitted pressure =
/// −slope · exposure. It is counted from the fitted baseline and not from the measured one, because
/// the error of that single inspection would otherwise stay in every later loss; measured against
/// measured is the rule of record and stands beside it. So the loss at exposure x has the standard
/// error x · se(slope), none at x = 0, and (loss − true loss) / se follows Student's t with n − 2
/// degrees of freedom.
class LineTrend {
public:
    /// Nothing where no line can be drawn: fewer than two inspections, or all at one exposure.
    [[nodiscard]] static std::optional<LineTrend> through(const HistoryLife& life);

    /// Whether bounds and odds can be told: from three inspections on.
    [[nodiscard]] bool hasSpread() const { return m_slopeSe.has_value(); }

    [[nodiscard]] Force meanLossAt(double exposure) const;
    [[nodiscard]] Force meanLossPerRace() const;

    /// With equal-tailed 90 % bounds; without spread the bounds are the mean.
    [[nodiscard]] ForceEstimate lossAt(double exposure) const;
    [[nodiscard]] ForceEstimate lossPerRace() const;

    /// The probability that the loss at `exposure` is at least `limit`; nothing without spread.
    [[nodiscard]] std::optional<double> oddsOfReaching(Force limit, double exposure) const;

    /// The same for 0 to 60 races on from `exposureNow`.
    [[nodiscard]] std::optional<OddsAhead> oddsAhead(Force limit, int exposureNow) const;

    /// Points of the loss for a chart, both ends included, at most 61 of them.
    [[nodiscard]] std::vector<TrendPoint> points(int fromExposure, int toExposure) const;

private:
    LineTrend(const statistics::LineFit& fit, std::optional<double> slopeSe, double t95);

    double m_slope = 0.0; ///< lbf per race, negative for a spring that loses pressure
    std::optional<double> m_slopeSe;
    double m_degreesOfFreedom = 0.0;
    double m_t95 = 0.0;
};

/// A newest reading that fell below what the spring's own earlier readings allow.
struct OffTrendFinding {
    Force newest;
    Force lowestAllowed;
};

/// The newest inspection's mean against the line through the earlier ones: off trend below the
/// lower 99.7 % prediction bound for one further inspection. The bound is one-sided, since only a
/// reading that is too low points to a failing spring: 99.7 % of sound springs read above it. From
/// four inspections on (three earlier ones); nothing otherwise or where no line can be drawn.
[[nodiscard]] std::optional<OffTrendFinding> findOffTrend(const HistoryLife& life);

} // namespace coilbook
