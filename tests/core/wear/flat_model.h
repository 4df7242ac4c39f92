#pragma once

#include "core/wear/fit.h"
#include "tests/core/wear/mixed_model_data.h"

#include <Eigen/Core>

#include <cstddef>

namespace coilbook::testing {

/// The product's solution with flat priors of all coefficients, no wander and no events: its
/// marginal likelihood is then the restricted likelihood of the mixed model.
class FlatModel {
public:
    /// Logs of sigma, sigma_c, tau.
    using Logs = Eigen::Vector3d;

    explicit FlatModel(const MixedModelData& data);

    /// -infinity where no solution exists.
    double logLikelihood(const Logs& logs);

    /// The spreads at which the restricted likelihood is greatest, by the quasi-Newton method of
    /// Broyden, Fletcher, Goldfarb and Shanno; the solution stays there. A spread that runs to 0 is
    /// left where it no longer matters.
    Logs optimum();

    [[nodiscard]] double slope(std::size_t life) const;
    [[nodiscard]] double shift(std::size_t session) const;

private:
    struct Slopes {
        Logs gradient;
        Logs second; ///< second derivatives along the axes
    };

    /// Somewhere to begin: noise from second differences of the readings, shared out.
    [[nodiscard]] Logs start() const;
    [[nodiscard]] Slopes slopesAt(const Logs& logs, double value);

    wear::Season m_season;
    wear::CoefficientPriors m_priors;
    wear::Fit m_fit;
};

} // namespace coilbook::testing
