#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace coilbook::statistics {

/// The distribution of a count: element n is the probability of n.
using CountDistribution = std::vector<double>;

/// How many of several independent events come true, each with a probability of its own, by
/// adding one event after the other (exact convolution, all terms positive: no digits are lost).
/// Probabilities outside 0 to 1 are taken as the nearer of the two. Has one element more than
/// there are events.
[[nodiscard]] CountDistribution poissonBinomial(std::span<const double> probabilities);

/// Adds `weight` times a distribution to another one, which grows where it is shorter: a mixture
/// is the sum of its parts with weights that sum to 1.
void addTo(CountDistribution& sum, double weight, const CountDistribution& part);

/// The smallest n that the count does not exceed with a probability of at least `certainty`;
/// nothing for an empty distribution. One that falls short of 1 by rounding ends at its last
/// element.
[[nodiscard]] std::optional<std::size_t> enoughFor(const CountDistribution& distribution,
                                                   double certainty);

[[nodiscard]] double meanOf(const CountDistribution& distribution);

} // namespace coilbook::statistics
