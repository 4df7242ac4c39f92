#pragma once

#include "core/wear/season.h"

#include <Eigen/Core>

namespace coilbook::wear {

/// The spreads that are integrated over (specification, section 2), and gamma, which follows.
struct Hyperparameters {
    double sigma = 0.0;  ///< placement SD of a cell, lbf
    double sigmaC = 0.0; ///< SD of the inspections' common shifts, lbf
    double tau = 0.0;    ///< SD of the springs' rates, lbf a race
    double kappa = 0.0;  ///< wander of a spring, lbf per sqrt race
    double gamma = 0.0;  ///< common wander (race severity), lbf per sqrt race
    double lambda = 1.0; ///< wear level of this engine against the typical one
};

constexpr int kEta = 5;

/// Standardised logs of (sigma, sigma_c, tau/lambda, kappa/lambda, lambda): prior N(0, I).
using Eta = Eigen::Matrix<double, kEta, 1>;

/// Prior of the logs of the hyperparameters: means and SDs (section 2).
struct HyperPrior {
    Eta mean;
    Eta sd;

    [[nodiscard]] Hyperparameters at(const Eta& eta) const;
};

/// The table of section 2. The prior of sigma depends on whether the hits of a cell tell the
/// tester's repeatability (16 degrees of freedom or more, section 1 'Noise').
[[nodiscard]] HyperPrior hyperPriorFor(int hitDegreesOfFreedom);

/// Prior means and precisions of the coefficients that do not belong to a session. A precision of
/// 0 is a flat prior, which adds nothing to the log determinant: with all of them flat the marginal
/// likelihood is that of restricted maximum likelihood.
struct CoefficientPriors {
    Eigen::VectorXd sharedMean;      ///< mu, delta, B, o_1 …
    Eigen::VectorXd sharedPrecision; ///< likewise
    double startPrecision = 1e-4;    ///< a_s around its first reading
    double settlePrecision = 0.0;    ///< d_s
    double eventPrecision = 1e-4;    ///< columns of events and level changes
};

/// The table of section 2 at wear level `lambda`.
[[nodiscard]] CoefficientPriors coefficientPriorsAt(double lambda, std::size_t overRevs);

} // namespace coilbook::wear
