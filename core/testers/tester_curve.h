#pragma once

#include "core/domain/calibration.h"
#include "core/statistics/polynomial_fit.h"
#include "core/units/force.h"

#include <optional>

namespace coilbook {

/// What a calibration makes of a tester's readings: the curve of indication over force, fitted to
/// its table, and its inverse. In lbf whatever unit the table has.
class TesterCurve {
public:
    /// Nothing where the table carries no rising curve of its degree.
    [[nodiscard]] static std::optional<TesterCurve> of(const Calibration& calibration);

    /// The force under which the tester shows `indication`. Beyond the ends of the table the
    /// correction of that end holds: a curve is not trusted where nothing was measured.
    [[nodiscard]] Force corrected(Force indication) const;

    /// Standard uncertainty of one corrected reading from the scatter of the table and its curve
    /// (see PolynomialFit::inverse). The references themselves count as exact. Nothing where
    /// the table has no more points than the curve has coefficients.
    [[nodiscard]] std::optional<Force> uncertainty(Force indication) const;

    /// Degrees of freedom behind uncertainty().
    [[nodiscard]] double degreesOfFreedom() const {
        return static_cast<double>(m_fit.degreesOfFreedom());
    }

    /// Whether a reading lies within what the table covers.
    [[nodiscard]] bool covers(Force indication) const;

    [[nodiscard]] const statistics::PolynomialFit& fit() const { return m_fit; }

private:
    explicit TesterCurve(const statistics::PolynomialFit& fit)
        : m_fit(fit) {}

    /// A reading drawn to the nearer end of the table.
    [[nodiscard]] double withinTable(Force indication) const;

    statistics::PolynomialFit m_fit;
};

} // namespace coilbook
