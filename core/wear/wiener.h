#pragma once

#include <Eigen/Core>

namespace coilbook::wear {

/// Inverse W and log determinant of V with V_ij = v_i [i=j] + k2 min(x_i, x_j): white noise plus a
/// Wiener process of variance k2 per unit of x, started at 0 (specification, section 3,
/// 'wienerInv'). O(n²) for the dense inverse, O(n) to apply it to a vector, by the tridiagonal form
/// of the process's precision. Cells with x <= 0, and all if k2 = 0, carry white noise only. x must
/// ascend; increments are floored at 1e-6.
class WienerInverse {
public:
    void compute(const Eigen::Ref<const Eigen::VectorXd>& x,
                 const Eigen::Ref<const Eigen::VectorXd>& v, double k2);

    [[nodiscard]] double logDeterminant() const { return m_logDeterminant; } ///< log |V|

    /// W times `sides`, which must be another matrix than `result`.
    void apply(const Eigen::MatrixXd& sides, Eigen::MatrixXd& result) const;

    /// Writes the lower half of W, n × n; what stands above the diagonal is not defined.
    void writeLowerTo(Eigen::MatrixXd& inverse) const;

private:
    Eigen::Index m_first = 0;      ///< first cell that the process reaches
    Eigen::VectorXd m_weights;     ///< 1/v
    Eigen::VectorXd m_reciprocals; ///< 1/d of A = diag(1/v) + precision of the process = L D L'
    Eigen::VectorXd m_multipliers; ///< l
    Eigen::VectorXd m_carried;     ///< l of the cell before
    double m_logDeterminant = 0.0;
};

} // namespace coilbook::wear
