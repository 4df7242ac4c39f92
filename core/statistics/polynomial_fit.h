#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

namespace coilbook::statistics {

/// An x found from an observed y, with its standard uncertainty.
struct InverseReading {
    double x = 0.0;
    double standardUncertainty = 0.0;
};

/// y = c0 + c1 x (+ c2 x²) fitted by ordinary least squares, for calibration: x exact, independent
/// errors in y with one common spread. Solved by Householder QR on x moved and scaled to [−1, 1]
/// (Golub & Van Loan, Matrix Computations, section 5.3), since normal equations would square a
/// condition number that is bad already for x in the hundreds of thousands. Standard errors and
/// bands are the standard results of linear regression (Draper & Smith, Applied Regression
/// Analysis, chapters 5 and 8).
class PolynomialFit {
public:
    static constexpr std::size_t kMostTerms = 3;

    [[nodiscard]] int degree() const { return m_degree; } ///< 1 or 2

    [[nodiscard]] std::size_t n() const { return m_n; }

    [[nodiscard]] std::size_t degreesOfFreedom() const { return m_n - terms(); }

    /// Coefficients of 1, x, x²; the last is 0 for degree 1.
    [[nodiscard]] std::array<double, kMostTerms> coefficients() const;

    /// Their standard errors; nothing where no degree of freedom is left over.
    [[nodiscard]] std::optional<std::array<double, kMostTerms>> coefficientSes() const;

    [[nodiscard]] double residualSumOfSquares() const { return m_residualSumOfSquares; }

    /// √(RSS / degrees of freedom); nothing without any.
    [[nodiscard]] std::optional<double> residualSd() const;

    /// 1 where all y are equal.
    [[nodiscard]] double rSquared() const { return m_rSquared; }

    [[nodiscard]] double lowestX() const { return m_lowestX; }

    [[nodiscard]] double highestX() const { return m_highestX; }

    /// The curve's height and slope at `x`.
    [[nodiscard]] double at(double x) const;
    [[nodiscard]] double slopeAt(double x) const;

    /// Standard error of the curve's height at `x` (half width of the confidence band: times t).
    [[nodiscard]] std::optional<double> meanSe(double x) const;

    /// Standard error of one further observation at `x` (prediction band).
    [[nodiscard]] std::optional<double> singleSe(double x) const;

    /// The x at which the curve stands at `y`: of two, the one on the branch that runs through the
    /// middle of the data. Its standard uncertainty follows by the law of propagation (JCGM
    /// 100:2008, 5.1.2): √(s²/m + meanSe²) / |slope|, where y is the mean of m = `readings`
    /// observations. Nothing where the curve never stands at y, where it is level there, or where
    /// there is no spread to go by.
    [[nodiscard]] std::optional<InverseReading> inverse(double y, int readings = 1) const;

    /// The same without its uncertainty, which an exact fit through its points has too.
    [[nodiscard]] std::optional<double> inverseAt(double y) const;

    /// Nothing for another degree than 1 or 2, for fewer points than coefficients, fewer different
    /// x than coefficients, or where a sum is not finite. Precondition: as many y as x.
    [[nodiscard]] static std::optional<PolynomialFit> of(std::span<const double> x,
                                                         std::span<const double> y, int degree);

private:
    using Terms = std::array<double, kMostTerms>;

    [[nodiscard]] std::size_t terms() const { return static_cast<std::size_t>(m_degree) + 1; }

    [[nodiscard]] double scaled(double x) const { return (x - m_centre) / m_halfWidth; }

    [[nodiscard]] Terms basis(double x) const;
    /// gᵀ (X'X)⁻¹ g in the scaled terms.
    [[nodiscard]] double leverage(const Terms& g) const;
    [[nodiscard]] std::optional<double> inverseScaled(double y) const;

    int m_degree = 1;
    std::size_t m_n = 0;
    double m_centre = 0.0;
    double m_halfWidth = 1.0;
    double m_lowestX = 0.0;
    double m_highestX = 0.0;
    Terms m_scaled{};                          ///< coefficients of the scaled terms
    std::array<Terms, kMostTerms> m_inverse{}; ///< (X'X)⁻¹ of the scaled terms
    double m_residualSumOfSquares = 0.0;
    double m_rSquared = 1.0;
};

/// Whether the points leave the curve by more than they scatter at equal x.
struct LackOfFit {
    double replicationSd = 0.0; ///< pooled spread at equal x
    std::size_t replicationDf = 0;
    double f = 0.0;
    std::size_t curveDf = 0;
    double pValue = 1.0; ///< probability of so large an F if the curve were right
};

/// F test of the residuals against the replicates (Draper & Smith, section 2.1). Nothing without
/// repeated x, without spread among them, or with no more different x than coefficients.
[[nodiscard]] std::optional<LackOfFit>
lackOfFit(const PolynomialFit& fit, std::span<const double> x, std::span<const double> y);

} // namespace coilbook::statistics
