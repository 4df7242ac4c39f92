#pragma once

#include "core/wear/solution.h"

#include <Eigen/Core>

#include <optional>
#include <utility>

namespace coilbook::wear {

/// A linear functional of a life's coefficients, of the shared ones and of the two wanders
/// (section 3, 'Posterior of a linear functional').
struct Functional {
    std::size_t life = 0;
    Eigen::VectorXd local;                                 ///< l; empty: none of a life's own
    Eigen::VectorXd shared;                                ///< k, all columns
    std::optional<double> ownWanderAt;                     ///< contains W_s(x*)
    std::optional<std::pair<double, double>> commonWander; ///< contains G(second) - G(first)
};

/// Posterior of a functional: mean, and what its variance and covariances are made from. All but
/// the mean is the same for every life of a class, and the mean is linear in the readings.
struct FunctionalPosterior {
    double mean = 0.0;
    Eigen::VectorXd local;  ///< w
    Eigen::VectorXd shared; ///< h
    double residual = 0.0;  ///< variance that no coefficient carries
    double constant = 0.0;  ///< mean of a life that read its first reading ever since
    Eigen::VectorXd slopes; ///< v: what each reading adds to the mean

    [[nodiscard]] double variance() const {
        return local.squaredNorm() + shared.squaredNorm() + residual;
    }

    /// Mean of the same functional of another life of the class, given its LifeClass::readings.
    template <class Derived>
    [[nodiscard]] double meanGiven(const Eigen::MatrixBase<Derived>& readings) const {
        return constant + slopes.dot(readings);
    }
};

/// Of functionals of the same life (or both of none).
[[nodiscard]] inline double covariance(const FunctionalPosterior& a, const FunctionalPosterior& b) {
    return a.local.dot(b.local) + a.shared.dot(b.shared);
}

[[nodiscard]] FunctionalPosterior posteriorOf(const Functional& functional, const Design& design,
                                              const Solution& solution);

/// c_t, the shift that all readings of a session share (section 6): mean and variance.
[[nodiscard]] std::pair<double, double> sessionShift(std::size_t session, const Design& design,
                                                     const Solution& solution);

} // namespace coilbook::wear
