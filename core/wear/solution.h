#pragma once

#include "core/wear/design.h"
#include "core/wear/priors.h"
#include "core/wear/wiener.h"

#include <Eigen/Core>

#include <vector>

namespace coilbook::wear {

/// What one class contributes at fixed hyperparameters (section 3, in the form of section 10).
struct ClassSolution {
    WienerInverse w;       ///< W = V^-1
    Eigen::MatrixXd wt;    ///< Wt = W - B'B, n × n, lower half only
    Eigen::MatrixXd g;     ///< lower Cholesky factor of Q = P + Z'WZ, k × k
    Eigen::MatrixXd right; ///< B' with B = G^-1 Z'W, n × k
    Eigen::VectorXd f0;    ///< F phi0: what the prior means alone would read
};

/// The posterior of all coefficients at fixed hyperparameters, and the log marginal likelihood of
/// the readings there (section 3). One object is a workspace: solve() may be called again and again
/// without allocating anew.
class Solution {
public:
    /// False when a pivot is not positive or the result is not finite; nothing else may be asked
    /// of the object then.
    [[nodiscard]] bool solve(const Design& design, const Hyperparameters& theta,
                             const CoefficientPriors& priors);

    [[nodiscard]] double logMarginalLikelihood() const { return m_logLikelihood; }

    [[nodiscard]] const Hyperparameters& theta() const { return m_theta; }

    [[nodiscard]] const CoefficientPriors& priors() const { return m_priors; }

    [[nodiscard]] const std::vector<ClassSolution>& classes() const { return m_classes; }

    [[nodiscard]] const Eigen::VectorXd& phi() const { return m_phi; } ///< phi_hat, minus phi0

    [[nodiscard]] const Eigen::MatrixXd& sessionPrecision() const { return m_sessionPrecision; }

    /// M^-1 times the columns of `right`, in place; H = M M'.
    template <class Derived>
    void solveLower(Eigen::MatrixBase<Derived>& right) const {
        m_h.triangularView<Eigen::Lower>().solveInPlace(right);
    }

private:
    [[nodiscard]] bool addClass(const LifeClass& lifeClass, ClassSolution& solution);
    void scatter(const LifeClass& lifeClass, const ClassSolution& solution);

    Hyperparameters m_theta;
    CoefficientPriors m_priors;
    std::vector<ClassSolution> m_classes;
    Eigen::MatrixXd m_sessionPrecision; ///< C^-1
    Eigen::MatrixXd m_h;                ///< lower half: H, then its factor M
    Eigen::VectorXd m_gradient;
    Eigen::VectorXd m_phi;
    double m_logLikelihood = 0.0;
    double m_quadratic = 0.0; ///< yy of section 3

    // Scratch
    WienerInverse m_sessionWander;
    Eigen::VectorXd m_variance;
    Eigen::MatrixXd m_sides;   ///< F without its session columns, sum of residuals, F phi0
    Eigen::MatrixXd m_wtSides; ///< Wt times these
    Eigen::MatrixXd m_inner;   ///< B times these
};

} // namespace coilbook::wear
