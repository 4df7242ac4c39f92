#pragma once

#include <cstddef>
#include <vector>

namespace coilbook::statistics {

/// A point of a rule for the mean of a function of a standard normal variable.
struct QuadraturePoint {
    double z = 0.0;
    double weight = 0.0;
};

/// The rule of Gauss and Hermite with `points` >= 1 points, for the standard normal weight: the
/// mean of every polynomial of degree 2 points - 1 is exact. From the eigenvalues of its
/// three-term recurrence (Golub and Welsch, Mathematics of Computation 23 (1969) 221).
[[nodiscard]] std::vector<QuadraturePoint> normalQuadrature(std::size_t points);

} // namespace coilbook::statistics
