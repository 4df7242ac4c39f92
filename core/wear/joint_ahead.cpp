#include "core/wear/joint_ahead.h"

#include "core/statistics/normal_quadrature.h"
#include "core/wear/loss_functional.h"
#include "core/wear/mixture.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <utility>

namespace coilbook::wear {

namespace {

constexpr double kSettleVariance = 0.35 * 0.35; ///< of d_s, section 2
constexpr Eigen::Index kDirections = 2;         ///< mean rate with the common wander, and by kind

/// P(loss >= limit) of a normal; a point without variance.
double oddsOf(double mean, double variance, double limit) {
    if (!(variance > 0.0)) {
        return mean >= limit ? 1.0 : 0.0;
    }
    return normalCdf((mean - limit) / std::sqrt(variance));
}

/// A spring that would be put in now: no coefficient of its own is known yet.
Functional newSpring(int kind, const Season& season, const Design& design, double races) {
    Functional f;
    f.shared = Eigen::VectorXd::Zero(design.columns());
    f.shared.head<3>() << races, races * kind, season.runIn ? 0.0 : 1.0;
    f.commonWander = std::pair(season.now, season.now + races);
    return f;
}

/// Covariance that the inspections leave open of the common wander over stretches that begin at
/// each of `from` and end at `to`.
Eigen::MatrixXd commonWander(const std::vector<double>& from, double to, const Design& design,
                             const Solution& solution) {
    const double g2 = solution.theta().gamma * solution.theta().gamma;
    const auto n = static_cast<Eigen::Index>(from.size());
    Eigen::MatrixXd q(design.sessions.size(), n);
    for (Eigen::Index s = 0; s < n; ++s) {
        q.col(s) = -g2 * (design.sessions.array().min(to) -
                          design.sessions.array().min(from[static_cast<std::size_t>(s)]))
                             .matrix();
    }
    Eigen::MatrixXd open = -q.transpose() * (solution.sessionPrecision() * q);
    for (Eigen::Index a = 0; a < n; ++a) {
        for (Eigen::Index b = 0; b < n; ++b) {
            open(a, b) += g2 * (to - std::max(from[static_cast<std::size_t>(a)],
                                              from[static_cast<std::size_t>(b)]));
        }
    }
    return open;
}

/// The principal directions that carry most of a covariance, each scaled to its SD.
Eigen::MatrixXd directionsOf(const Eigen::MatrixXd& covariance) {
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(covariance);
    const Eigen::Index n = covariance.cols();
    const Eigen::Index kept = std::min(n, kDirections);
    Eigen::MatrixXd directions(n, kDirections);
    directions.setZero();
    for (Eigen::Index d = 0; d < kept; ++d) {
        const double value = std::max(solver.eigenvalues()[n - 1 - d], 0.0);
        directions.col(d) = std::sqrt(value) * solver.eigenvectors().col(n - 1 - d);
    }
    return directions;
}

/// Fine enough for springs of which little but the shared part is open: their odds are steep.
/// Points that weigh nothing are left out.
std::vector<statistics::QuadraturePoint> fineRule(std::size_t points) {
    constexpr double kNothing = 1e-9;
    std::vector<statistics::QuadraturePoint> rule = statistics::normalQuadrature(points);
    std::erase_if(rule,
                  [](const statistics::QuadraturePoint& point) { return point.weight < kNothing; });
    return rule;
}

} // namespace

JointAhead::JointAhead(std::vector<SpringAhead> springs, const Season& season, const Fit& fit,
                       double races)
    : m_springs(std::move(springs))
    , m_dropped(m_springs.size(), 0.0) {
    m_parts.reserve(fit.nodes.size());
    for (std::size_t i = 0; i < fit.nodes.size(); ++i) {
        if (fit.nodes[i].weight > 0.0) {
            addPart(season, fit, i, races);
        }
    }
}

void JointAhead::addPart(const Season& season, const Fit& fit, std::size_t node, double races) {
    const Solution& solution = fit.solutions[node];
    const Hyperparameters& theta = solution.theta();
    const auto n = static_cast<Eigen::Index>(m_springs.size());
    Part part;
    part.weight = fit.nodes[node].weight;
    part.mean.resize(n);
    part.ownVariance.resize(n);
    part.stepMean.setZero(n);
    part.stepVariance.setZero(n);
    Eigen::MatrixXd loadings(fit.design.columns(), n);
    std::vector<double> from;
    Eigen::VectorXd variance(n);
    for (Eigen::Index s = 0; s < n; ++s) {
        const SpringAhead& spring = m_springs[static_cast<std::size_t>(s)];
        FunctionalPosterior loss;
        if (spring.life) {
            const Life& life = season.lives[*spring.life];
            const LossFunctional f =
                lossFunctional(*spring.life, instantAhead(life, season, races), season, fit.design);
            loss = posteriorOf(f.trend, fit.design, solution);
            m_dropped[static_cast<std::size_t>(s)] = f.dropProbability();
            if (f.dropProbability() > 0.0) {
                const FunctionalPosterior step = posteriorOf(f.withStep(), fit.design, solution);
                part.stepMean[s] = step.mean;
                part.stepVariance[s] = step.variance();
            }
            variance[s] = loss.variance();
            from.push_back(life.installed);
        } else {
            loss = posteriorOf(newSpring(spring.kind, season, fit.design, races), fit.design,
                               solution);
            variance[s] = loss.variance() + races * races * theta.tau * theta.tau +
                          races * theta.kappa * theta.kappa +
                          (season.runIn ? 0.0 : kSettleVariance);
            from.push_back(season.now);
        }
        part.mean[s] = loss.mean;
        loadings.col(s) = loss.shared;
    }
    part.shared = loadings.transpose() * loadings +
                  commonWander(from, season.now + races, fit.design, solution);
    part.ownVariance = (variance - part.shared.diagonal()).cwiseMax(0.0);
    part.stepVariance = (part.stepVariance - part.shared.diagonal()).cwiseMax(0.0);
    m_parts.push_back(std::move(part));
}

std::vector<double> JointAhead::oddsAtLeast(double limit) const {
    std::vector<double> odds(m_springs.size(), 0.0);
    for (const Part& part : m_parts) {
        for (std::size_t s = 0; s < odds.size(); ++s) {
            const auto i = static_cast<Eigen::Index>(s);
            const double common = part.shared(i, i);
            const double dropped = m_dropped[s];
            odds[s] += part.weight * (1.0 - dropped) *
                       oddsOf(part.mean[i], part.ownVariance[i] + common, limit);
            if (dropped > 0.0) {
                odds[s] += part.weight * dropped *
                           oddsOf(part.stepMean[i], part.stepVariance[i] + common, limit);
            }
        }
    }
    return odds;
}

std::vector<double> JointAhead::meanLosses() const {
    std::vector<double> means(m_springs.size(), 0.0);
    for (const Part& part : m_parts) {
        for (std::size_t s = 0; s < means.size(); ++s) {
            const auto i = static_cast<Eigen::Index>(s);
            means[s] += part.weight *
                        ((1.0 - m_dropped[s]) * part.mean[i] + m_dropped[s] * part.stepMean[i]);
        }
    }
    return means;
}

statistics::CountDistribution JointAhead::countAtLeast(double limit) const {
    static const std::vector<statistics::QuadraturePoint> kFirst = fineRule(61);
    static const std::vector<statistics::QuadraturePoint> kSecond = fineRule(11);
    statistics::CountDistribution counts(m_springs.size() + 1, 0.0);
    std::vector<double> odds(m_springs.size());
    for (const Part& part : m_parts) {
        const Eigen::MatrixXd directions = directionsOf(part.shared);
        const Eigen::VectorXd carried = directions.rowwise().squaredNorm();
        const Eigen::VectorXd left = (part.shared.diagonal() - carried).cwiseMax(0.0);
        for (const statistics::QuadraturePoint& first : kFirst) {
            for (const statistics::QuadraturePoint& second : kSecond) {
                const Eigen::VectorXd moved =
                    first.z * directions.col(0) + second.z * directions.col(1);
                for (std::size_t s = 0; s < odds.size(); ++s) {
                    const auto i = static_cast<Eigen::Index>(s);
                    odds[s] = (1.0 - m_dropped[s]) *
                              oddsOf(part.mean[i] + moved[i], part.ownVariance[i] + left[i], limit);
                    if (m_dropped[s] > 0.0) {
                        odds[s] += m_dropped[s] * oddsOf(part.stepMean[i] + moved[i],
                                                         part.stepVariance[i] + left[i], limit);
                    }
                }
                statistics::addTo(counts, part.weight * first.weight * second.weight,
                                  statistics::poissonBinomial(odds));
            }
        }
    }
    return counts;
}

} // namespace coilbook::wear
