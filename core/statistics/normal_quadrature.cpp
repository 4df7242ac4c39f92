#include "core/statistics/normal_quadrature.h"

#include <Eigen/Eigenvalues>

#include <cmath>

namespace coilbook::statistics {

std::vector<QuadraturePoint> normalQuadrature(std::size_t points) {
    const auto n = static_cast<Eigen::Index>(points);
    Eigen::MatrixXd recurrence = Eigen::MatrixXd::Zero(n, n);
    for (Eigen::Index k = 1; k < n; ++k) {
        recurrence(k, k - 1) = std::sqrt(static_cast<double>(k));
        recurrence(k - 1, k) = recurrence(k, k - 1);
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(recurrence);
    std::vector<QuadraturePoint> rule;
    for (Eigen::Index k = 0; k < n; ++k) {
        const double first = solver.eigenvectors()(0, k);
        rule.push_back({solver.eigenvalues()[k], first * first});
    }
    return rule;
}

} // namespace coilbook::statistics
