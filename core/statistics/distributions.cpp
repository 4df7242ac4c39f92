#include "core/statistics/distributions.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <exception>

namespace coilbook::statistics {

namespace {

/// Boost.Math reports a domain or overflow error by an exception; it ends here.
template <class Compute>
std::optional<double> finite(const Compute& compute) {
    try {
        const double value = compute();
        return std::isfinite(value) ? std::optional(value) : std::nullopt;
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

template <class Distribution>
double cdfOf(const Distribution& distribution, double x) {
    if (std::isinf(x)) {
        return x > 0.0 ? 1.0 : 0.0;
    }
    return boost::math::cdf(distribution, x);
}

} // namespace

std::optional<double> studentTCdf(double t, double degreesOfFreedom) {
    return finite([&] { return cdfOf(boost::math::students_t(degreesOfFreedom), t); });
}

std::optional<double> studentTQuantile(double probability, double degreesOfFreedom) {
    return finite([&] {
        return boost::math::quantile(boost::math::students_t(degreesOfFreedom), probability);
    });
}

std::optional<double> normalCdf(double z) {
    return finite([&] { return cdfOf(boost::math::normal(), z); });
}

std::optional<double> normalQuantile(double probability) {
    return finite([&] { return boost::math::quantile(boost::math::normal(), probability); });
}

std::optional<double> fUpperTail(double f, double numeratorDf, double denominatorDf) {
    return finite([&] {
        const boost::math::fisher_f distribution(numeratorDf, denominatorDf);
        return std::isinf(f) && f > 0.0
                   ? 0.0
                   : boost::math::cdf(boost::math::complement(distribution, f));
    });
}

std::optional<double> chiSquaredTail(double x, double degreesOfFreedom) {
    return finite([&] {
        return boost::math::cdf(
            boost::math::complement(boost::math::chi_squared(degreesOfFreedom), x));
    });
}

} // namespace coilbook::statistics
