#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace coilbook::statistics {

/// A straight line y = intercept + slope · x fitted by ordinary least squares, with what is needed
/// to say how sure it is. Assumes independent errors in y with one common spread and exact x.
/// Formulas are the standard results of simple linear regression (Draper & Smith, Applied
/// Regression Analysis, chapter 1); all sums are taken about the means, so that large x or y with
/// small differences keep their digits.
struct LineFit {
    std::size_t n = 0;
    double meanX = 0.0;
    double meanY = 0.0;
    double sumXX = 0.0; ///< Σ(x − x̄)², above 0
    double intercept = 0.0;
    double slope = 0.0;
    double residualSumOfSquares = 0.0;
    double rSquared = 1.0;            ///< 1 where all y are equal
    std::size_t degreesOfFreedom = 0; ///< n − 2
    /// √(RSS / (n − 2)); empty for two points, whose line leaves nothing over.
    std::optional<double> residualSd;

    /// The line's height at `x`.
    [[nodiscard]] double at(double x) const;

    /// s / √Σ(x − x̄)²
    [[nodiscard]] std::optional<double> slopeSe() const;

    [[nodiscard]] std::optional<double> interceptSe() const;

    /// Standard error of the line's height at `x`: s √(1/n + (x − x̄)² / Σ(x − x̄)²).
    [[nodiscard]] std::optional<double> meanSe(double x) const;

    /// Standard error of predicting one further observation at `x`:
    /// s √(1 + 1/n + (x − x̄)² / Σ(x − x̄)²).
    [[nodiscard]] std::optional<double> singleSe(double x) const;

    /// The x at which the line stands at `level`; nothing for a level line.
    [[nodiscard]] std::optional<double> crossing(double level) const;
};

/// Nothing for fewer than two points, where all x are equal, or where a sum is not finite.
/// Precondition: as many y as x.
[[nodiscard]] std::optional<LineFit> fitLine(std::span<const double> x, std::span<const double> y);

} // namespace coilbook::statistics
