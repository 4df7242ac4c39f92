#include "core/assessment/line_trend.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace coilbook {

namespace {

using statistics::LineFit;

/// Means of the inspections in lbf, on exposures.
struct Means {
    std::vector<double> exposures;
    std::vector<double> pressures;
    double step = 0.0; ///< finest step in which the readings were written, lbf
};

Means meansOf(const HistoryLife& life) {
    Means means;
    for (const HistoryCell& cell : life.cells) {
        means.exposures.push_back(cell.exposure);
        means.pressures.push_back(cell.mean().inPoundsForce());
        for (const HistoryHit& hit : cell.hits) {
            const double step =
                TypedForce(1, hit.value.decimals(), hit.value.unit()).force().inPoundsForce();
            means.step = means.step == 0.0 ? step : std::min(means.step, step);
        }
    }
    return means;
}

/// The line with a residual spread that is never 0. Readings are written in steps, so a line that
/// meets them all exactly is no sign of perfect knowledge: the spread is then that of rounding to a
/// step d, d / √12 (JCGM 100:2008, F.2.2.1).
std::optional<LineFit> fitReadings(std::span<const double> exposures,
                                   std::span<const double> pressures, double step) {
    std::optional<LineFit> fit = statistics::fitLine(exposures, pressures);
    if (fit && fit->residualSd) {
        constexpr double kRoundingOfDoubles = 1e-12;
        if (*fit->residualSd <= kRoundingOfDoubles * std::abs(fit->meanY)) {
            fit->residualSd = step / std::sqrt(12.0);
        }
    }
    return fit;
}

/// Bounds of an interval around a mean; a bound that the mean lies beyond is set to it.
ForceEstimate estimate(double mean, double low, double high) {
    return {Force::poundsForce(mean), Force::poundsForce(std::min(low, mean)),
            Force::poundsForce(std::max(high, mean))};
}

} // namespace

LineTrend::LineTrend(const LineFit& fit, std::optional<double> slopeSe, double t95)
    : m_slope(fit.slope)
    , m_slopeSe(slopeSe)
    , m_degreesOfFreedom(static_cast<double>(fit.degreesOfFreedom))
    , m_t95(t95) {}

std::optional<LineTrend> LineTrend::through(const HistoryLife& life) {
    const Means means = meansOf(life);
    const auto fit = fitReadings(means.exposures, means.pressures, means.step);
    if (!fit) {
        return std::nullopt;
    }
    if (fit->degreesOfFreedom == 0) {
        return LineTrend(*fit, std::nullopt, 0.0);
    }
    const auto slopeSe = fit->slopeSe();
    const auto t95 = statistics::studentTQuantile(0.95, static_cast<double>(fit->degreesOfFreedom));
    if (!slopeSe || !t95 || !std::isfinite(*slopeSe) || *slopeSe <= 0.0) {
        return std::nullopt;
    }
    return LineTrend(*fit, slopeSe, *t95);
}

Force LineTrend::meanLossAt(double exposure) const {
    return meanLossPerRace() * exposure;
}

Force LineTrend::meanLossPerRace() const {
    return Force::poundsForce(0.0 - m_slope);
}

ForceEstimate LineTrend::lossAt(double exposure) const {
    const ForceEstimate rate = lossPerRace();
    return {rate.mean * exposure, rate.low90 * exposure, rate.high90 * exposure};
}

ForceEstimate LineTrend::lossPerRace() const {
    const double mean = meanLossPerRace().inPoundsForce();
    const double half = m_t95 * m_slopeSe.value_or(0.0);
    return estimate(mean, mean - half, mean + half);
}

std::optional<double> LineTrend::oddsOfReaching(Force limit, double exposure) const {
    if (!m_slopeSe) {
        return std::nullopt;
    }
    if (exposure <= 0.0) {
        return limit <= Force() ? 1.0 : 0.0;
    }
    const double rateNeeded = limit.inPoundsForce() / exposure;
    const double t = (meanLossPerRace().inPoundsForce() - rateNeeded) / *m_slopeSe;
    return statistics::studentTCdf(t, m_degreesOfFreedom);
}

std::optional<OddsAhead> LineTrend::oddsAhead(Force limit, int exposureNow) const {
    OddsAhead odds{};
    for (std::size_t h = 0; h < odds.size(); ++h) {
        const auto reached = oddsOfReaching(limit, exposureNow + static_cast<double>(h));
        if (!reached) {
            return std::nullopt;
        }
        odds[h] = *reached;
    }
    return odds;
}

std::vector<TrendPoint> LineTrend::points(int fromExposure, int toExposure) const {
    const int steps = std::clamp(toExposure - fromExposure, 1, 60);
    std::vector<TrendPoint> points;
    for (int i = 0; i <= steps; ++i) {
        const double exposure =
            fromExposure + static_cast<double>(toExposure - fromExposure) * i / steps;
        const ForceEstimate loss = lossAt(exposure);
        points.push_back({exposure, loss.mean, loss.low90, loss.high90});
    }
    return points;
}

std::optional<OffTrendFinding> findOffTrend(const HistoryLife& life) {
    constexpr std::size_t kFewestInspections = 4;
    constexpr double kShareAboveTheBound = 0.997;
    const Means means = meansOf(life);
    if (means.exposures.size() < kFewestInspections) {
        return std::nullopt;
    }
    const std::size_t earlier = means.exposures.size() - 1;
    const auto fit = fitReadings(std::span(means.exposures).first(earlier),
                                 std::span(means.pressures).first(earlier), means.step);
    if (!fit) {
        return std::nullopt;
    }
    const double at = means.exposures.back();
    const auto se = fit->singleSe(at);
    const auto t = statistics::studentTQuantile(kShareAboveTheBound,
                                                static_cast<double>(fit->degreesOfFreedom));
    if (!se || !t) {
        return std::nullopt;
    }
    const double lowest = fit->at(at) - *t * *se;
    if (!(means.pressures.back() < lowest)) {
        return std::nullopt;
    }
    return OffTrendFinding{Force::poundsForce(means.pressures.back()), Force::poundsForce(lowest)};
}

} // namespace coilbook
