#include "core/wear/solution.h"

#include <cmath>
#include <numbers>

namespace coilbook::wear {

namespace {

const double kLogTwoPi = std::log(2.0 * std::numbers::pi);

double logOrNothing(double precision) {
    return precision > 0.0 ? std::log(precision) : 0.0;
}

/// Lower Cholesky factor in place, of the lower half; false where a pivot is not positive. The
/// matrices of this model have some thirty columns at most: too few for blocked products.
bool factorInPlace(Eigen::MatrixXd& q) {
    const Eigen::Index n = q.cols();
    for (Eigen::Index j = 0; j < n; ++j) {
        for (Eigen::Index c = 0; c < j; ++c) {
            q.col(j).tail(n - j) -= q(j, c) * q.col(c).tail(n - j);
        }
        if (!(q(j, j) > 0.0)) {
            return false;
        }
        q.col(j).tail(n - j) /= std::sqrt(q(j, j));
    }
    return true;
}

} // namespace

bool Solution::solve(const Design& design, const Hyperparameters& theta,
                     const CoefficientPriors& priors) {
    m_theta = theta;
    m_priors = priors;
    const Eigen::Index statics = design.sharedColumns();
    const Eigen::Index p = design.columns();
    const Eigen::Index sessions = design.sessions.size();

    m_variance.setConstant(sessions, theta.sigmaC * theta.sigmaC);
    m_sessionWander.compute(design.sessions, m_variance, theta.gamma * theta.gamma);
    m_sessionWander.writeLowerTo(m_sessionPrecision);
    m_sessionPrecision.triangularView<Eigen::StrictlyUpper>() = m_sessionPrecision.transpose();
    m_h.setZero(p, p);
    m_h.diagonal().head(statics) = priors.sharedPrecision;
    m_h.bottomRightCorner(sessions, sessions) = m_sessionPrecision;
    m_gradient.setZero(p);
    m_quadratic = 0.0;
    m_logLikelihood = -0.5 * m_sessionWander.logDeterminant();
    for (Eigen::Index i = 0; i < statics; ++i) {
        m_logLikelihood += 0.5 * logOrNothing(priors.sharedPrecision[i]);
    }

    m_classes.resize(design.classes.size());
    for (std::size_t c = 0; c < design.classes.size(); ++c) {
        if (!addClass(design.classes[c], m_classes[c])) {
            return false;
        }
    }
    if (!factorInPlace(m_h)) {
        return false;
    }
    m_phi = m_gradient;
    solveLower(m_phi);
    m_logLikelihood += 0.5 * (m_phi.squaredNorm() - m_quadratic);
    m_logLikelihood -= m_h.diagonal().array().log().sum();
    m_h.triangularView<Eigen::Lower>().transpose().solveInPlace(m_phi);
    return std::isfinite(m_logLikelihood);
}

bool Solution::addClass(const LifeClass& lifeClass, ClassSolution& solution) {
    const Eigen::Index n = lifeClass.x.size();
    const Eigen::Index k = lifeClass.local.cols();
    const auto count = static_cast<double>(lifeClass.lives.size());
    m_variance = lifeClass.fixedVariance.array() + m_theta.sigma * m_theta.sigma;
    solution.w.compute(lifeClass.x, m_variance, m_theta.kappa * m_theta.kappa);

    solution.w.apply(lifeClass.local, solution.right);
    solution.g.noalias() = lifeClass.local.transpose().lazyProduct(solution.right);
    double logDetP = 0.0;
    for (Eigen::Index i = 0; i < k; ++i) {
        const double precision = i == 0   ? m_priors.startPrecision
                                 : i == 1 ? 1.0 / (m_theta.tau * m_theta.tau)
                                 : i == 2 ? m_priors.settlePrecision
                                          : m_priors.eventPrecision;
        solution.g(i, i) += precision;
        logDetP += logOrNothing(precision);
        if (i == 2 && precision <= 0.0) {
            solution.g(i, i) += 1.0; // own settling switched off: its column is zero as well
        }
    }
    if (!factorInPlace(solution.g)) {
        return false;
    }
    for (Eigen::Index c = 0; c < k; ++c) { // B' = W Z G'^-1
        for (Eigen::Index j = 0; j < c; ++j) {
            solution.right.col(c) -= solution.g(c, j) * solution.right.col(j);
        }
        solution.right.col(c) /= solution.g(c, c);
    }
    solution.w.writeLowerTo(solution.wt);
    for (Eigen::Index j = 0; j < n; ++j) {
        for (Eigen::Index c = 0; c < k; ++c) {
            solution.wt.col(j).tail(n - j) -=
                solution.right(j, c) * solution.right.col(c).tail(n - j);
        }
    }
    solution.f0.noalias() = lifeClass.shared * m_priors.sharedMean;

    m_logLikelihood +=
        count * (0.5 * logDetP - solution.g.diagonal().array().log().sum() -
                 0.5 * static_cast<double>(n) * kLogTwoPi - 0.5 * solution.w.logDeterminant());
    scatter(lifeClass, solution);
    return true;
}

/// Adds F'WtF, F'Wt r and r'Wt r of the class; the session columns of F only pick rows. Of the
/// symmetric sum only the lower half is made: the factorisation asks for no more.
void Solution::scatter(const LifeClass& lifeClass, const ClassSolution& solution) {
    const Eigen::Index n = lifeClass.x.size();
    const Eigen::Index statics = lifeClass.shared.cols();
    const auto count = static_cast<double>(lifeClass.lives.size());
    m_sides.resize(n, statics + 2);
    m_sides.leftCols(statics) = lifeClass.shared;
    m_sides.col(statics) = lifeClass.readingsSum - count * solution.f0;
    m_sides.col(statics + 1) = solution.f0;
    m_inner.noalias() = solution.right.transpose().lazyProduct(m_sides);
    solution.w.apply(m_sides, m_wtSides);
    m_wtSides.noalias() -= solution.right.lazyProduct(m_inner);
    const auto wtResidual = m_wtSides.col(statics);
    const auto wtF0 = m_wtSides.col(statics + 1);

    m_h.topLeftCorner(statics, statics).noalias() +=
        count * lifeClass.shared.transpose().lazyProduct(m_wtSides.leftCols(statics));
    m_gradient.head(statics).noalias() += lifeClass.shared.transpose() * wtResidual;
    for (Eigen::Index i = 0; i < n; ++i) {
        const Eigen::Index row = statics + lifeClass.sessions[static_cast<std::size_t>(i)];
        m_h.row(row).head(statics) += count * m_wtSides.row(i).head(statics);
        m_gradient[row] += wtResidual[i];
    }
    for (Eigen::Index j = 0; j < n; ++j) {
        const Eigen::Index column = statics + lifeClass.sessions[static_cast<std::size_t>(j)];
        for (Eigen::Index i = j; i < n; ++i) { // sessions ascend with the cells
            m_h(statics + lifeClass.sessions[static_cast<std::size_t>(i)], column) +=
                count * solution.wt(i, j);
        }
    }
    for (Eigen::Index j = 0; j < n; ++j) {
        m_quadratic +=
            solution.wt.col(j).tail(n - j).dot(lifeClass.readingsOuter.col(j).tail(n - j));
    }
    m_quadratic += -2.0 * wtF0.dot(lifeClass.readingsSum) + count * wtF0.dot(solution.f0);
}

} // namespace coilbook::wear
