#pragma once

namespace coilbook {

/// The range of n independent readings of one normal distribution with SD 1: the value that it
/// stays within with probability p. With p = 0.95 it is the critical range factor by which repeated
/// results are compared (ISO 5725-6:1994, 4.1.4: 2.8, 3.3, 3.6 … for 2, 3, 4 … results).
/// Preconditions: n >= 2, 0 < p < 1. Accurate to 1e-6.
[[nodiscard]] double rangeQuantile(int n, double p);

} // namespace coilbook
