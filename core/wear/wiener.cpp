#include "core/wear/wiener.h"

#include <algorithm>
#include <cmath>

namespace coilbook::wear {

void WienerInverse::compute(const Eigen::Ref<const Eigen::VectorXd>& x,
                            const Eigen::Ref<const Eigen::VectorXd>& v, double k2) {
    const Eigen::Index n = x.size();
    m_weights = v.cwiseInverse();
    m_first = 0;
    while (m_first < n && (x[m_first] <= 0.0 || k2 <= 0.0)) {
        ++m_first;
    }
    m_reciprocals.resize(n);
    m_multipliers.resize(n);
    m_carried.resize(n);
    // Logs are dear: products of a few factors first.
    m_logDeterminant = 0.0;
    double product = 1.0;
    const auto multiply = [&](double factor) {
        product *= factor;
        if (!(product < 1e100 && product > 1e-100)) {
            m_logDeterminant += std::log(product);
            product = 1.0;
        }
    };
    for (Eigen::Index i = 0; i < m_first; ++i) {
        multiply(v[i]);
    }
    double before = 0.0;
    double carried = 0.0;
    for (Eigen::Index i = m_first; i < n; ++i) {
        const double precision = 1.0 / (k2 * std::max(x[i] - before, 1e-6)); // of this increment
        const double next = i + 1 < n ? 1.0 / (k2 * std::max(x[i + 1] - x[i], 1e-6)) : 0.0;
        const double pivot = m_weights[i] + precision + next + precision * carried;
        m_reciprocals[i] = 1.0 / pivot;
        m_multipliers[i] = -next / pivot;
        m_carried[i] = carried;
        multiply(pivot * v[i] / precision);
        carried = m_multipliers[i];
        before = x[i];
    }
    m_logDeterminant += std::log(product);
}

void WienerInverse::apply(const Eigen::MatrixXd& sides, Eigen::MatrixXd& result) const {
    // W y = (y - A^-1 (y/v))/v, and A^-1 by the bidiagonal factors of A.
    const Eigen::Index n = m_weights.size();
    result.resize(n, sides.cols());
    for (Eigen::Index c = 0; c < sides.cols(); ++c) {
        for (Eigen::Index i = 0; i < m_first; ++i) {
            result(i, c) = sides(i, c) * m_weights[i];
        }
        double forward = 0.0;
        for (Eigen::Index i = m_first; i < n; ++i) {
            forward = sides(i, c) * m_weights[i] - m_carried[i] * forward;
            result(i, c) = forward;
        }
        double level = 0.0; // of the process
        for (Eigen::Index i = n - 1; i >= m_first; --i) {
            level = result(i, c) * m_reciprocals[i] - m_multipliers[i] * level;
            result(i, c) = (sides(i, c) - level) * m_weights[i];
        }
    }
}

void WienerInverse::writeLowerTo(Eigen::MatrixXd& inverse) const {
    const Eigen::Index n = m_weights.size();
    inverse.resize(n, n);
    inverse.leftCols(m_first).setZero();
    inverse.diagonal().head(m_first) = m_weights.head(m_first);
    // S = A^-1 from the last corner upward, column by column below the diagonal; then
    // W = 1/v - S/(v v').
    for (Eigen::Index j = n - 1; j >= m_first; --j) {
        const Eigen::Index below = n - 1 - j;
        inverse(j, j) = m_reciprocals[j];
        if (below > 0) {
            inverse.col(j).tail(below) = -m_multipliers[j] * inverse.col(j + 1).tail(below);
            inverse(j, j) -= m_multipliers[j] * inverse(j + 1, j);
        }
    }
    for (Eigen::Index j = m_first; j < n; ++j) {
        inverse.col(j).tail(n - j).array() *= -m_weights[j] * m_weights.tail(n - j).array();
        inverse(j, j) += m_weights[j];
    }
}

} // namespace coilbook::wear
