#pragma once

#include <span>
#include <vector>

namespace coilbook::wear {

/// One normal of a mixture; a variance of 0 is a point.
struct MixturePart {
    double weight = 0.0;
    double mean = 0.0;
    double variance = 0.0;
};

/// Outputs are mixtures of normals over the nodes, never averages of SDs (section 4).
class Mixture {
public:
    explicit Mixture(std::vector<MixturePart> parts)
        : m_parts(std::move(parts)) {}

    [[nodiscard]] double mean() const;
    [[nodiscard]] double sd() const;
    /// P(X >= limit), in the form that cannot become negative (section 5).
    [[nodiscard]] double probabilityAtLeast(double limit) const;
    /// Safeguarded Newton on the cdf from the moment-matched normal (section 4). 0 < p < 1.
    [[nodiscard]] double quantile(double p) const;

private:
    std::vector<MixturePart> m_parts;
};

/// The standard normal distribution function and its inverse (Boost.Math).
[[nodiscard]] double normalCdf(double z);
[[nodiscard]] double normalQuantile(double p);
/// log of the normal density with mean 0 at x.
[[nodiscard]] double logNormalDensity(double x, double variance);

} // namespace coilbook::wear
