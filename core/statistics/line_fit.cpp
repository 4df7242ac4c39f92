#include "core/statistics/line_fit.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace coilbook::statistics {

namespace {

/// The mean, corrected once by the mean of what is left over after taking it off.
double meanOf(std::span<const double> values) {
    const auto n = static_cast<double>(values.size());
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    const double mean = sum / n;
    double rest = 0.0;
    for (const double value : values) {
        rest += value - mean;
    }
    return mean + rest / n;
}

bool allEqual(std::span<const double> values) {
    return std::all_of(values.begin(), values.end(),
                       [&](double value) { return value == values.front(); });
}

std::optional<double> scaled(const std::optional<double>& sd, double variance) {
    return sd ? std::optional(*sd * std::sqrt(variance)) : std::nullopt;
}

} // namespace

double LineFit::at(double x) const {
    return meanY + slope * (x - meanX);
}

std::optional<double> LineFit::slopeSe() const {
    return scaled(residualSd, 1.0 / sumXX);
}

std::optional<double> LineFit::interceptSe() const {
    return meanSe(0.0);
}

std::optional<double> LineFit::meanSe(double x) const {
    const double distance = x - meanX;
    return scaled(residualSd, 1.0 / static_cast<double>(n) + distance * distance / sumXX);
}

std::optional<double> LineFit::singleSe(double x) const {
    const double distance = x - meanX;
    return scaled(residualSd, 1.0 + 1.0 / static_cast<double>(n) + distance * distance / sumXX);
}

std::optional<double> LineFit::crossing(double level) const {
    const double x = meanX + (level - meanY) / slope;
    return slope != 0.0 && std::isfinite(x) ? std::optional(x) : std::nullopt;
}

std::optional<LineFit> fitLine(std::span<const double> x, std::span<const double> y) {
    assert(x.size() == y.size());
    if (x.size() < 2 || allEqual(x)) {
        return std::nullopt;
    }
    LineFit fit;
    fit.n = x.size();
    fit.meanX = meanOf(x);
    fit.meanY = meanOf(y);
    double sumXY = 0.0;
    double sumYY = 0.0;
    for (std::size_t i = 0; i < fit.n; ++i) {
        const double dx = x[i] - fit.meanX;
        const double dy = y[i] - fit.meanY;
        fit.sumXX += dx * dx;
        sumXY += dx * dy;
        sumYY += dy * dy;
    }
    fit.slope = sumXY / fit.sumXX;
    fit.intercept = fit.meanY - fit.slope * fit.meanX;
    for (std::size_t i = 0; i < fit.n; ++i) {
        const double residual = (y[i] - fit.meanY) - fit.slope * (x[i] - fit.meanX);
        fit.residualSumOfSquares += residual * residual;
    }
    fit.rSquared = allEqual(y) ? 1.0 : 1.0 - fit.residualSumOfSquares / sumYY;
    fit.degreesOfFreedom = fit.n - 2;
    if (fit.degreesOfFreedom > 0) {
        fit.residualSd =
            std::sqrt(fit.residualSumOfSquares / static_cast<double>(fit.degreesOfFreedom));
    }
    const bool sound = std::isfinite(fit.sumXX) && fit.sumXX > 0.0 && std::isfinite(fit.slope) &&
                       std::isfinite(fit.intercept) && std::isfinite(fit.residualSumOfSquares) &&
                       std::isfinite(fit.rSquared);
    return sound ? std::optional(fit) : std::nullopt;
}

} // namespace coilbook::statistics
