#include "core/statistics/range_distribution.h"

#include <boost/math/distributions/normal.hpp>

#include <cmath>

namespace coilbook {

namespace {

/// P(range <= r) = n ∫ φ(x) (Φ(x + r) − Φ(x))^(n−1) dx (for example David & Nagaraja, Order
/// Statistics, 3rd edition, section 2.3), by the trapezium rule, which converges geometrically on
/// so smooth an integrand.
double rangeCdf(int n, double r) {
    constexpr double kEnd = 9.0; // beyond it φ is below 1e-18
    constexpr int kSteps = 720;
    const boost::math::normal_distribution<double> normal;
    double sum = 0.0;
    for (int i = 0; i <= kSteps; ++i) {
        const double x = -kEnd + 2.0 * kEnd * i / kSteps;
        sum += boost::math::pdf(normal, x) *
               std::pow(boost::math::cdf(normal, x + r) - boost::math::cdf(normal, x), n - 1);
    }
    return n * sum * 2.0 * kEnd / kSteps;
}

} // namespace

double rangeQuantile(int n, double p) {
    double low = 0.0;
    double high = 20.0;
    while (high - low > 1e-7) {
        const double middle = 0.5 * (low + high);
        (rangeCdf(n, middle) < p ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

} // namespace coilbook
