#pragma once

#include "core/statistics/poisson_binomial.h"
#include "core/wear/fit.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace coilbook::wear {

/// A spring whose loss is looked at: one that stands in the engine, or one that would be put in new
/// at the present count.
struct SpringAhead {
    std::optional<std::size_t> life; ///< index in Season::lives; empty: a new one
    int kind = 0;                    ///< of a new one: 0 intake, 1 exhaust
};

/// The losses of several springs some races from now, taken together. At one node of the posterior
/// they are jointly normal: what each spring's own coefficients and wander leave open is
/// independent, what the rates, the break-in, the inspections' shifts and the common wander of all
/// springs leave open is not.
class JointAhead {
public:
    /// At one node. A pending drop makes a spring's loss one of two normals; they share the
    /// covariance with the other springs.
    struct Part {
        double weight = 0.0;
        Eigen::VectorXd mean;
        Eigen::VectorXd ownVariance;  ///< of each spring by itself
        Eigen::MatrixXd shared;       ///< covariance of the rest, springs × springs
        Eigen::VectorXd stepMean;     ///< with its pending drop, where there is one
        Eigen::VectorXd stepVariance; ///< likewise, own part
    };

    /// `races` > 0, in mean races.
    JointAhead(std::vector<SpringAhead> springs, const Season& season, const Fit& fit,
               double races);

    [[nodiscard]] const std::vector<Part>& parts() const { return m_parts; }

    /// Probability that a spring's pending event is a drop; 0 without one.
    [[nodiscard]] const std::vector<double>& dropProbabilities() const { return m_dropped; }

    /// P(loss >= limit) of each spring, as the posterior of its life has it.
    [[nodiscard]] std::vector<double> oddsAtLeast(double limit) const;

    /// How many of the springs have lost the limit: at each node the shared covariance is carried
    /// by its largest principal directions, over which quadrature runs; what is left of it counts
    /// as each spring's own, so that every spring keeps its odds. Given a point of these the
    /// springs are independent and their count is an exact convolution.
    [[nodiscard]] statistics::CountDistribution countAtLeast(double limit) const;

    /// Mean loss over the nodes.
    [[nodiscard]] std::vector<double> meanLosses() const;

private:
    void addPart(const Season& season, const Fit& fit, std::size_t node, double races);

    std::vector<SpringAhead> m_springs;
    std::vector<double> m_dropped;
    std::vector<Part> m_parts;
};

} // namespace coilbook::wear
