#include "core/wear/priors.h"

#include <cmath>

namespace coilbook::wear {

Hyperparameters HyperPrior::at(const Eta& eta) const {
    const Eta logs = mean + sd.cwiseProduct(eta);
    Hyperparameters theta;
    theta.sigma = std::exp(logs[0]);
    theta.sigmaC = std::exp(logs[1]);
    theta.lambda = std::exp(logs[4]);
    theta.tau = std::exp(logs[2]) * theta.lambda;
    theta.kappa = std::exp(logs[3]) * theta.lambda;
    theta.gamma = 0.12 * theta.lambda;
    return theta;
}

HyperPrior hyperPriorFor(int hitDegreesOfFreedom) {
    constexpr int kEnoughDegreesOfFreedom = 16;
    const bool known = hitDegreesOfFreedom >= kEnoughDegreesOfFreedom;
    HyperPrior prior;
    prior.mean << std::log(known ? 0.35 : 0.8), std::log(0.8), std::log(0.12), std::log(0.06), 0.0;
    prior.sd << (known ? 0.7 : 0.5), 0.6, 0.6, 0.8, 0.4;
    return prior;
}

CoefficientPriors coefficientPriorsAt(double lambda, std::size_t overRevs) {
    const auto k = static_cast<Eigen::Index>(overRevs);
    CoefficientPriors priors;
    priors.sharedMean.resize(3 + k);
    priors.sharedMean.head<3>() << 0.30 * lambda, 0.07 * lambda, 0.75;
    priors.sharedMean.tail(k).setConstant(0.9);
    const auto precision = [](double sd) {
        return 1.0 / (sd * sd);
    };
    priors.sharedPrecision.resize(3 + k);
    priors.sharedPrecision.head<3>() << precision(0.30 * lambda), precision(0.12 * lambda),
        precision(1.0);
    priors.sharedPrecision.tail(k).setConstant(precision(0.5));
    priors.settlePrecision = precision(0.35);
    return priors;
}

} // namespace coilbook::wear
