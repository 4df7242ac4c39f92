#include "core/wear/mixture.h"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coilbook::wear {

double normalCdf(double z) {
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normalQuantile(double p) {
    constexpr double kLeast = 1e-300;
    return boost::math::quantile(boost::math::normal(), std::clamp(p, kLeast, 1.0 - 1e-16));
}

double logNormalDensity(double x, double variance) {
    return -0.5 * (std::log(2.0 * std::numbers::pi * variance) + x * x / variance);
}

double Mixture::mean() const {
    double sum = 0.0;
    for (const MixturePart& part : m_parts) {
        sum += part.weight * part.mean;
    }
    return sum;
}

double Mixture::sd() const {
    const double centre = mean();
    double sum = 0.0;
    for (const MixturePart& part : m_parts) {
        const double off = part.mean - centre;
        sum += part.weight * (part.variance + off * off);
    }
    return std::sqrt(std::max(sum, 0.0));
}

double Mixture::probabilityAtLeast(double limit) const {
    double sum = 0.0;
    for (const MixturePart& part : m_parts) {
        if (part.variance > 0.0) {
            sum += part.weight * normalCdf((part.mean - limit) / std::sqrt(part.variance));
        } else {
            sum += part.mean >= limit ? part.weight : 0.0;
        }
    }
    return std::clamp(sum, 0.0, 1.0);
}

double Mixture::quantile(double p) const {
    const double centre = mean();
    const double spread = sd();
    if (!(spread > 0.0)) {
        return centre;
    }
    double low = centre - 40.0 * spread;
    double high = centre + 40.0 * spread;
    double x = centre + spread * normalQuantile(p);
    constexpr int kMostSteps = 100;
    for (int step = 0; step < kMostSteps; ++step) {
        double below = 0.0;
        double density = 0.0;
        for (const MixturePart& part : m_parts) {
            if (part.variance > 0.0) {
                const double sdOfPart = std::sqrt(part.variance);
                const double z = (x - part.mean) / sdOfPart;
                below += part.weight * normalCdf(z);
                density += part.weight * std::exp(-0.5 * z * z) /
                           (sdOfPart * std::sqrt(2.0 * std::numbers::pi));
            } else {
                below += x >= part.mean ? part.weight : 0.0;
            }
        }
        const double off = below - p;
        (off > 0.0 ? high : low) = x;
        const double newton = density > 0.0 ? x - off / density : low;
        const double next = newton > low && newton < high ? newton : 0.5 * (low + high);
        if (std::abs(next - x) <= 1e-10 * spread) {
            return next;
        }
        x = next;
    }
    return x;
}

} // namespace coilbook::wear
