#include "core/statistics/poisson_binomial.h"

#include <algorithm>

namespace coilbook::statistics {

CountDistribution poissonBinomial(std::span<const double> probabilities) {
    CountDistribution counts{1.0};
    counts.reserve(probabilities.size() + 1);
    for (const double probability : probabilities) {
        const double p = std::clamp(probability, 0.0, 1.0);
        counts.push_back(0.0);
        for (std::size_t n = counts.size() - 1; n > 0; --n) {
            counts[n] = counts[n] * (1.0 - p) + counts[n - 1] * p;
        }
        counts.front() *= 1.0 - p;
    }
    return counts;
}

void addTo(CountDistribution& sum, double weight, const CountDistribution& part) {
    sum.resize(std::max(sum.size(), part.size()), 0.0);
    for (std::size_t n = 0; n < part.size(); ++n) {
        sum[n] += weight * part[n];
    }
}

std::optional<std::size_t> enoughFor(const CountDistribution& distribution, double certainty) {
    if (distribution.empty()) {
        return std::nullopt;
    }
    double sum = 0.0;
    for (std::size_t n = 0; n < distribution.size(); ++n) {
        sum += distribution[n];
        if (sum >= certainty) {
            return n;
        }
    }
    return distribution.size() - 1;
}

double meanOf(const CountDistribution& distribution) {
    double mean = 0.0;
    for (std::size_t n = 0; n < distribution.size(); ++n) {
        mean += static_cast<double>(n) * distribution[n];
    }
    return mean;
}

} // namespace coilbook::statistics
