#include "core/statistics/polynomial_fit.h"

#include "core/statistics/distributions.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <set>
#include <vector>

namespace coilbook::statistics {

namespace {

double averageOf(std::span<const double> values) {
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    return sum / static_cast<double>(values.size());
}

bool allFinite(std::span<const double> values) {
    return std::all_of(values.begin(), values.end(),
                       [](double value) { return std::isfinite(value); });
}

} // namespace

PolynomialFit::Terms PolynomialFit::basis(double x) const {
    const double u = scaled(x);
    return {1.0, u, m_degree == 2 ? u * u : 0.0};
}

double PolynomialFit::leverage(const Terms& g) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < kMostTerms; ++i) {
        for (std::size_t j = 0; j < kMostTerms; ++j) {
            sum += g.at(i) * m_inverse.at(i).at(j) * g.at(j);
        }
    }
    return sum;
}

std::array<double, PolynomialFit::kMostTerms> PolynomialFit::coefficients() const {
    const double m = m_centre / m_halfWidth;
    return {m_scaled[0] - m_scaled[1] * m + m_scaled[2] * m * m,
            (m_scaled[1] - 2.0 * m * m_scaled[2]) / m_halfWidth,
            m_scaled[2] / (m_halfWidth * m_halfWidth)};
}

std::optional<std::array<double, PolynomialFit::kMostTerms>> PolynomialFit::coefficientSes() const {
    const std::optional<double> sd = residualSd();
    if (!sd) {
        return std::nullopt;
    }
    // Each coefficient is a linear combination of the scaled ones, as in coefficients().
    const double m = m_centre / m_halfWidth;
    const Terms constant{1.0, -m, m * m};
    const Terms linear{0.0, 1.0 / m_halfWidth, -2.0 * m / m_halfWidth};
    const Terms square{0.0, 0.0, 1.0 / (m_halfWidth * m_halfWidth)};
    return Terms{*sd * std::sqrt(leverage(constant)), *sd * std::sqrt(leverage(linear)),
                 *sd * std::sqrt(leverage(square))};
}

std::optional<double> PolynomialFit::residualSd() const {
    if (degreesOfFreedom() == 0) {
        return std::nullopt;
    }
    return std::sqrt(m_residualSumOfSquares / static_cast<double>(degreesOfFreedom()));
}

double PolynomialFit::at(double x) const {
    const Terms g = basis(x);
    return m_scaled[0] * g[0] + m_scaled[1] * g[1] + m_scaled[2] * g[2];
}

double PolynomialFit::slopeAt(double x) const {
    return (m_scaled[1] + 2.0 * m_scaled[2] * scaled(x)) / m_halfWidth;
}

std::optional<double> PolynomialFit::meanSe(double x) const {
    const std::optional<double> sd = residualSd();
    return sd ? std::optional(*sd * std::sqrt(leverage(basis(x)))) : std::nullopt;
}

std::optional<double> PolynomialFit::singleSe(double x) const {
    const std::optional<double> sd = residualSd();
    return sd ? std::optional(*sd * std::sqrt(1.0 + leverage(basis(x)))) : std::nullopt;
}

/// The root of c2 u² + c1 u + (c0 − y) that goes over into the straight line's as c2 goes to 0.
std::optional<double> PolynomialFit::inverseScaled(double y) const {
    const double rest = m_scaled[0] - y;
    const double discriminant = m_scaled[1] * m_scaled[1] - 4.0 * m_scaled[2] * rest;
    if (discriminant < 0.0 || m_scaled[1] == 0.0) {
        return std::nullopt;
    }
    const double u =
        -2.0 * rest / (m_scaled[1] + std::copysign(std::sqrt(discriminant), m_scaled[1]));
    return std::isfinite(u) ? std::optional(u) : std::nullopt;
}

std::optional<double> PolynomialFit::inverseAt(double y) const {
    const std::optional<double> u = inverseScaled(y);
    return u ? std::optional(m_centre + *u * m_halfWidth) : std::nullopt;
}

std::optional<InverseReading> PolynomialFit::inverse(double y, int readings) const {
    const std::optional<double> x = inverseAt(y);
    const std::optional<double> sd = residualSd();
    if (!x || !sd || readings < 1) {
        return std::nullopt;
    }
    const double slope = std::abs(slopeAt(*x));
    const double curve = meanSe(*x).value_or(0.0);
    const double u = std::sqrt(*sd * *sd / readings + curve * curve) / slope;
    return std::isfinite(u) ? std::optional(InverseReading{*x, u}) : std::nullopt;
}

std::optional<PolynomialFit> PolynomialFit::of(std::span<const double> x, std::span<const double> y,
                                               int degree) {
    assert(x.size() == y.size());
    if ((degree != 1 && degree != 2) || !allFinite(x) || !allFinite(y)) {
        return std::nullopt;
    }
    PolynomialFit fit;
    fit.m_degree = degree;
    fit.m_n = x.size();
    const std::set<double> different(x.begin(), x.end());
    if (different.size() < fit.terms()) {
        return std::nullopt;
    }
    fit.m_lowestX = *different.begin();
    fit.m_highestX = *different.rbegin();
    fit.m_centre = fit.m_lowestX / 2.0 + fit.m_highestX / 2.0;
    fit.m_halfWidth = fit.m_highestX / 2.0 - fit.m_lowestX / 2.0;

    const auto rows = static_cast<Eigen::Index>(fit.m_n);
    const auto columns = static_cast<Eigen::Index>(fit.terms());
    Eigen::MatrixXd design(rows, columns);
    Eigen::VectorXd observed(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
        const Terms g = fit.basis(x[static_cast<std::size_t>(i)]);
        for (Eigen::Index j = 0; j < columns; ++j) {
            design(i, j) = g.at(static_cast<std::size_t>(j));
        }
        observed(i) = y[static_cast<std::size_t>(i)];
    }
    const Eigen::HouseholderQR<Eigen::MatrixXd> qr(design);
    const Eigen::VectorXd solution = qr.solve(observed);
    const Eigen::VectorXd residuals = observed - design * solution;
    fit.m_residualSumOfSquares = residuals.squaredNorm();

    const Eigen::MatrixXd r = qr.matrixQR().topRows(columns).triangularView<Eigen::Upper>();
    const Eigen::MatrixXd inverse =
        r.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(columns, columns));
    const Eigen::MatrixXd covariance = inverse * inverse.transpose();
    for (Eigen::Index i = 0; i < columns; ++i) {
        fit.m_scaled.at(static_cast<std::size_t>(i)) = solution(i);
        for (Eigen::Index j = 0; j < columns; ++j) {
            fit.m_inverse.at(static_cast<std::size_t>(i)).at(static_cast<std::size_t>(j)) =
                covariance(i, j);
        }
    }
    const double total = (observed.array() - averageOf(y)).square().sum();
    fit.m_rSquared = total > 0.0 ? 1.0 - fit.m_residualSumOfSquares / total : 1.0;
    const bool sound = solution.allFinite() && covariance.allFinite() && std::isfinite(total) &&
                       std::isfinite(fit.m_residualSumOfSquares);
    return sound ? std::optional(fit) : std::nullopt;
}

std::optional<LackOfFit> lackOfFit(const PolynomialFit& fit, std::span<const double> x,
                                   std::span<const double> y) {
    assert(x.size() == y.size());
    std::map<double, std::vector<double>> groups;
    for (std::size_t i = 0; i < x.size(); ++i) {
        groups[x[i]].push_back(y[i]);
    }
    const auto terms = static_cast<std::size_t>(fit.degree()) + 1;
    if (groups.size() <= terms || groups.size() == x.size()) {
        return std::nullopt;
    }
    double within = 0.0;
    double between = 0.0;
    for (const auto& [at, values] : groups) {
        const double mean = averageOf(values);
        for (const double value : values) {
            within += (value - mean) * (value - mean);
        }
        const double off = mean - fit.at(at);
        between += static_cast<double>(values.size()) * off * off;
    }
    LackOfFit result;
    result.replicationDf = x.size() - groups.size();
    result.curveDf = groups.size() - terms;
    const double withinDf = static_cast<double>(result.replicationDf);
    const double curveDf = static_cast<double>(result.curveDf);
    result.replicationSd = std::sqrt(within / withinDf);
    result.f = (between / curveDf) / (within / withinDf);
    const std::optional<double> tail = fUpperTail(result.f, curveDf, withinDf);
    if (!tail) {
        return std::nullopt;
    }
    result.pValue = *tail;
    return result;
}

} // namespace coilbook::statistics
