#pragma once

#include <optional>

namespace coilbook::statistics {

// Nothing here throws; outside its domain, or where no finite answer exists, a function returns
// nothing. Values come from Boost.Math (incomplete beta and gamma functions, error function).

/// Probability that Student's t with `degreesOfFreedom` > 0 is at most `t`; infinite t allowed.
[[nodiscard]] std::optional<double> studentTCdf(double t, double degreesOfFreedom);

/// The t that is not exceeded with `probability`, strictly between 0 and 1.
[[nodiscard]] std::optional<double> studentTQuantile(double probability, double degreesOfFreedom);

/// Probability that a standard normal variable is at most `z`; infinite z allowed.
[[nodiscard]] std::optional<double> normalCdf(double z);

/// The z that is not exceeded with `probability`, strictly between 0 and 1.
[[nodiscard]] std::optional<double> normalQuantile(double probability);

/// Probability that Fisher's F with `numeratorDf`, `denominatorDf` > 0 is above `f` >= 0.
[[nodiscard]] std::optional<double> fUpperTail(double f, double numeratorDf, double denominatorDf);

/// Probability that chi-squared with `degreesOfFreedom` > 0 is above `x` >= 0.
[[nodiscard]] std::optional<double> chiSquaredTail(double x, double degreesOfFreedom);

} // namespace coilbook::statistics
